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
 */
final class SoftLightKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float b = Math.max(below[i], 0f);
      float s = Math.min(Math.max(frame[i], 0f), 1f);
      out[i] = b >= 1f ? b : softLight(b, 2f * s - 1f);
    }
  }

  /**
   * Blends a value from 0 to 1.
   *
   * @param lean −1 to 1: how far the frame darkens or brightens
   */
  private static float softLight(float b, float lean) {
    if (lean <= 0f) {
      return b + lean * b * (1f - b);
    }
    float brightened = b <= 0.25f ? ((16f * b - 12f) * b + 4f) * b : (float) Math.sqrt(b);
    return b + lean * (brightened - b);
  }
}
