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

  /**
   * Blends two values of 0 or more: first the dark half, which leaves {@code b} under a bright
   * frame, then the bright half, which leaves it under a dark one. Both identities are exact, and
   * so are twice a float and the less 1 up to 1; without a branch it runs on many pixels at a time.
   */
  static float hardLight(float b, float s) {
    float twice = 2f * s;
    return ScreenKernel.screen(b * Math.min(twice, 1f), Math.max(twice - 1f, 0f));
  }
}
