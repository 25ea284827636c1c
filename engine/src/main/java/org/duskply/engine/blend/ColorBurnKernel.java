package org.duskply.engine.blend;

/**
 * The picture below darkened towards the frame (W3C Compositing and Blending 1, {@code
 * color-burn}).
 *
 * <pre>
 * b ≥ 1: b          light above white, which the standard does not know, stays
 * s ≤ 0: 0
 * else:  1 − min(1, (1 − b)/min(s, 1))
 * </pre>
 *
 * <p>White stays white whatever the frame, as in the standard; below 0 both count as 0.
 */
final class ColorBurnKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = burn(Math.max(below[i], 0f), Math.max(frame[i], 0f));
    }
  }

  /** Blends two values of 0 or more. */
  private static float burn(float b, float s) {
    if (b >= 1f) {
      return b;
    }
    return s == 0f ? 0f : 1f - Math.min(1f, (1f - b) / Math.min(s, 1f));
  }
}
