package org.duskply.engine.blend;

/**
 * A blend mode that knows one channel at a time: W3C Compositing and Blending 1,
 * #blendingseparable.
 */
public interface SeparableKernel extends BlendKernel {
  /**
   * Blends one channel of pixels {@code from} up to {@code to}.
   *
   * @param below the picture below
   * @param frame what is laid over it
   * @param out the result; may be {@code below} or {@code frame} itself
   */
  void run(float[] below, float[] frame, float[] out, int from, int to);

  @Override
  default void run(float[][] below, float[][] frame, float[][] out, int from, int to) {
    for (int p = 0; p < 3; p++) {
      run(below[p], frame[p], out[p], from, to);
    }
  }
}
