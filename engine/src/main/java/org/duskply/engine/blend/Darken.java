package org.duskply.engine.blend;

/** The lesser of the two, of any values. W3C Compositing 1, #blendingdarken. */
final class Darken {
  private Darken() {}

  static void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = Math.min(below[i], frame[i]);
    }
  }
}
