package org.duskply.engine.blend;

/**
 * A harsh spotlight through the frame (W3C Compositing and Blending 1, {@code hard-light}): where
 * it is dark it darkens, where it is bright it brightens.
 *
 * <pre>
 * s ≤ ½: 2·b·s
 * else:  screen(b, 2·s − 1)
 * </pre>
 *
 * <p>Above 1, which the standard does not know, {@code screen} is the greater of the two; below 0
 * both count as 0.
 */
final class HardLightKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = hardLight(Math.max(below[i], 0f), Math.max(frame[i], 0f));
    }
  }

  /** Blends two values of 0 or more. Twice a float is exact, and so is the less 1 up to 1. */
  static float hardLight(float b, float s) {
    float twice = 2f * s;
    return s <= 0.5f ? b * twice : ScreenKernel.screen(b, twice - 1f);
  }
}
