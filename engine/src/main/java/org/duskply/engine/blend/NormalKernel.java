package org.duskply.engine.blend;

/** The frame as it is: {@code s} (W3C Compositing and Blending 1, {@code normal}). */
final class NormalKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    System.arraycopy(frame, from, out, from, to - from);
  }
}
