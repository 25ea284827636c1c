package org.duskply.engine.blend;

/** A blend mode on red, green and blue. Stateless and thread-safe. */
public interface BlendKernel {
  /**
   * Blends pixels {@code from} up to {@code to}.
   *
   * @param below the picture below: at least three planes, as the other two
   * @param frame what is laid over it
   * @param out the result; its planes may be those of {@code below} or {@code frame}
   */
  void run(float[][] below, float[][] frame, float[][] out, int from, int to);
}
