package org.duskply.engine.blend;

/**
 * One picture as a filter before the other: {@code b·s} (W3C Compositing and Blending 1, {@code
 * multiply}), without the clamp, so that light above white stays.
 */
final class MultiplyKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = below[i] * frame[i];
    }
  }
}
