package org.duskply.engine.blend;

/** A separable blend mode on one channel. Stateless and thread-safe. */
public interface BlendKernel {
  /**
   * Blends pixels {@code from} up to {@code to}.
   *
   * @param below the picture below
   * @param frame what is laid over it
   * @param out the result; may be {@code below} or {@code frame} itself
   */
  void run(float[] below, float[] frame, float[] out, int from, int to);
}
