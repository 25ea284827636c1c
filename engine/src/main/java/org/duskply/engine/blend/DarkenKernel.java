package org.duskply.engine.blend;

/** The darker of the two: {@code min(b, s)} (W3C Compositing and Blending 1, {@code darken}). */
final class DarkenKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = Math.min(below[i], frame[i]);
    }
  }
}
