package org.duskply.engine.blend;

/** The product {@code b·f}, of any values. W3C Compositing 1, #blendingmultiply. */
final class Multiply {
  private Multiply() {}

  static void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = below[i] * frame[i];
    }
  }
}
