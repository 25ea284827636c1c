package org.duskply.engine.blend;

/**
 * A diffused spotlight through the frame (W3C Compositing and Blending 1, {@code soft-light}).
 *
 * <pre>
 * s ≤ ½: b − (1 − 2·s)·b·(1 − b)
 * else:  b + (2·s − 1)·(D(b) − b)
 * D(b) = ((16·b − 12)·b + 4)·b for b ≤ ¼, else √b
 * </pre>
 *
 * <p>Light of 1 and above stays, which the standard does not know; a frame above 1 counts as 1, and
 * below 0 both count as 0. The root is {@code Math.sqrt}, which IEEE 754 and Java round exactly, so
 * that it has the same bits everywhere.
 *
 * <p>Done as two loops without a branch, one for each half, each of which leaves to the bit what
 * belongs to the other: so both run on many pixels at a time. White stays white in either, so that
 * light above it is put back by one exact product.
 */
final class SoftLightKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    float[] kept = out == frame ? frame.clone() : frame; // which is read again once out is written
    darken(below, kept, out, from, to);
    brighten(kept, out, from, to);
  }

  /** What the first line says, with its brackets opened from the left; never below 0. */
  private static void darken(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float b = Math.min(Math.max(below[i], 0f), 1f);
      float lean = Math.min(Math.max(2f * frame[i] - 1f, -1f), 0f);
      out[i] = (b + lean * b * (1f - b)) * Math.max(below[i], 1f);
    }
  }

  /**
   * What the second line says. D(b) is the polynomial up to ¼, where it is ½, and what the root is
   * above that: from ½ to 1 a difference from ½, and the sum that undoes it, are exact.
   */
  private static void brighten(float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float b = Math.min(out[i], 1f);
      float lean = Math.min(Math.max(2f * frame[i] - 1f, 0f), 1f);
      float dark = Math.min(b, 0.25f);
      float root = (float) Math.sqrt(Math.max(b, 0.25f));
      float brightened = ((16f * dark - 12f) * dark + 4f) * dark + (root - 0.5f);
      out[i] = (b + lean * (brightened - b)) * Math.max(out[i], 1f);
    }
  }
}
