package org.duskply.engine.blend;

/**
 * Hard light with the parts exchanged (W3C Compositing and Blending 1, {@code overlay}): the frame
 * shapes the picture below, whose blacks and whites stay.
 */
final class OverlayKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = HardLightKernel.hardLight(Math.max(frame[i], 0f), Math.max(below[i], 0f));
    }
  }
}
