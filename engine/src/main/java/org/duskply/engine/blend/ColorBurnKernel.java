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
  private static final float LEAST_FRAME = 0x1p-25f;

  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = burn(Math.max(below[i], 0f), Math.max(frame[i], 0f));
    }
  }

  /**
   * Blends two values of 0 or more. Below white there are at least 2⁻²⁴ to it, so that a frame held
   * above 2⁻²⁵ burns to 0 as black does. White stays white, so that light above it is put back by
   * one exact product. Without a branch it runs on many pixels at a time.
   */
  private static float burn(float b, float s) {
    float share = (1f - Math.min(b, 1f)) / Math.min(Math.max(s, LEAST_FRAME), 1f);
    return (1f - Math.min(1f, share)) * Math.max(b, 1f);
  }
}
