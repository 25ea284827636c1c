package org.duskply.engine.blend;

/**
 * The sum {@code b + f}, of any values, as lights add. W3C Compositing 1,
 * #porterduffcompositingoperators_plus_lighter, for opaque pictures and without its clamp at 1.
 */
final class PlusLighter {
  private PlusLighter() {}

  static void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = below[i] + frame[i];
    }
  }
}
