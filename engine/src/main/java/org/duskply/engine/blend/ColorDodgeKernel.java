package org.duskply.engine.blend;

/**
 * The picture below brightened towards the frame (W3C Compositing and Blending 1, {@code
 * color-dodge}).
 *
 * <pre>
 * b ≤ 0: 0
 * b ≥ 1: b          light above white, which the standard does not know, stays
 * s ≥ 1: 1
 * else:  min(1, b/(1 − s))
 * </pre>
 *
 * <p>Black stays black whatever the frame, as in the standard; a frame below 0 counts as 0.
 */
final class ColorDodgeKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = dodge(Math.max(below[i], 0f), Math.max(frame[i], 0f));
    }
  }

  /** Blends two values of 0 or more; 0 over what a white frame leaves would not be a number. */
  private static float dodge(float b, float s) {
    if (b == 0f || b >= 1f) {
      return b;
    }
    return s >= 1f ? 1f : Math.min(1f, b / (1f - s));
  }
}
