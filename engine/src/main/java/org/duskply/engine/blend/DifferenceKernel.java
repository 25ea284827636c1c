package org.duskply.engine.blend;

/**
 * How far the two are apart: {@code |b − s|} (W3C Compositing and Blending 1, {@code difference}),
 * for any values.
 */
final class DifferenceKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = Math.abs(below[i] - frame[i]);
    }
  }
}
