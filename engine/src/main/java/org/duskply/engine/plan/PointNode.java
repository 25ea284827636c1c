package org.duskply.engine.plan;

import org.duskply.engine.pixel.Region;

/**
 * A node whose every pixel depends on the same pixel of its inputs alone. The planner fuses such
 * nodes into one pass.
 */
public non-sealed interface PointNode extends Node {
  /**
   * Computes some pixels of one row. Index {@code i} of every array is canvas column {@code left +
   * i}.
   *
   * @param in rows of the inputs: input, plane, pixel
   * @param out the result: plane, pixel; may be the very arrays of the first input
   * @param left canvas column of index 0
   * @param y canvas row
   * @param from first index
   * @param to one past the last index
   */
  void row(float[][][] in, float[][] out, int left, int y, int from, int to);

  @Override
  default Region needs(int input, Region out) {
    return out;
  }

  @Override
  default Region footprint(Region within) {
    return within;
  }
}
