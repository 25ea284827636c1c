package org.duskply.engine.blend;

/**
 * Darkness multiplied, {@code 1 − (1 − b)·(1 − f)}, continued above white by the brighter of the
 * two:
 *
 * <pre>
 *   b + f − b·f    for b ≤ 1 and f ≤ 1     W3C Compositing 1, #blendingscreen
 *   max(b, f)      above                   our extension: W3C's own formula falls there,
 *                                          and two lights of 2 would give black
 * </pre>
 *
 * continuous and never falling in either. Values below 0 are held to 0 first. Evaluated as {@code h
 * + l·(1 − h)} of the higher and the lower, whose rounding neither falls below {@code h} nor rises
 * above white.
 */
final class Screen {
  private Screen() {}

  static void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float b = Math.max(below[i], 0f);
      float f = Math.max(frame[i], 0f);
      float high = Math.max(b, f);
      out[i] = high + Math.min(b, f) * Math.max(1 - high, 0f);
    }
  }
}
