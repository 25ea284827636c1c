package org.duskply.engine.blend;

/**
 * A softer difference: {@code b + s − 2·b·s} (W3C Compositing and Blending 1, {@code exclusion}),
 * written as
 *
 * <pre>
 * |b − s| + 2·min(b, s)·max(0, 1 − max(b, s))
 * </pre>
 *
 * <p>which is the same up to 1 and above it, which the standard does not know, the difference.
 * Below 0 both count as 0.
 */
final class ExclusionKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float b = Math.max(below[i], 0f);
      float s = Math.max(frame[i], 0f);
      float left = Math.max(0f, 1f - Math.max(b, s));
      out[i] = Math.abs(b - s) + 2f * Math.min(b, s) * left;
    }
  }
}
