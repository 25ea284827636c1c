package org.duskply.engine.blend;

/** The frame in place of the picture below: {@code f}. W3C Compositing 1, #blendingnormal. */
final class Normal {
  private Normal() {}

  static void run(float[] below, float[] frame, float[] out, int from, int to) {
    if (out != frame) {
      System.arraycopy(frame, from, out, from, to - from);
    }
  }
}
