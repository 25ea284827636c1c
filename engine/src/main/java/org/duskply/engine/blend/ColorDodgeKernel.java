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

  /**
   * Blends two values of 0 or more. What a white frame leaves is held above nothing: any light over
   * that is white, and none stays none. White stays white, so that light above it is put back by
   * one exact product. Without a branch it runs on many pixels at a time.
   */
  private static float dodge(float b, float s) {
    float upToWhite = Math.min(1f, Math.min(b, 1f) / Math.max(1f - s, Float.MIN_VALUE));
    return upToWhite * Math.max(b, 1f);
  }
}
