package org.duskply.engine.blend;

/**
 * The brighter of the two: {@code max(b, s)} (W3C Compositing and Blending 1, {@code lighten}).
 * What a pop does.
 */
final class LightenKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = Math.max(below[i], frame[i]);
    }
  }
}
