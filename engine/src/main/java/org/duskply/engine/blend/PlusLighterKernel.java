package org.duskply.engine.blend;

/**
 * The light of both: {@code b + s} (W3C Compositing and Blending 1, {@code plus-lighter}, without
 * its clamp).
 */
final class PlusLighterKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = below[i] + frame[i];
    }
  }
}
