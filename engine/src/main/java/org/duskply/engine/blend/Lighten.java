package org.duskply.engine.blend;

/** The greater of the two, of any values. W3C Compositing 1, #blendinglighten. */
final class Lighten {
  private Lighten() {}

  static void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = Math.max(below[i], frame[i]);
    }
  }
}
