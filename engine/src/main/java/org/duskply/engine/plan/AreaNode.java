package org.duskply.engine.plan;

import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * A node whose pixels depend on a neighbourhood of its inputs, or on none. Any rectangle can be
 * asked for, and a pixel has the same bits in each.
 */
public non-sealed interface AreaNode extends Node {
  /**
   * Fills {@code out}.
   *
   * @param in the inputs, each covering at least {@code needs(i, out.area())}
   */
  void fill(List<Planes> in, Planes out);

  /**
   * The most pixels on any side that it reads around a pixel of its own size; see {@link Reach}.
   */
  default int reach() {
    return 0;
  }

  /**
   * Whether it has no inputs and is made in about the time in which it is copied, so that whoever
   * reads it may as well make it, and once more for the next band.
   */
  default boolean cheap() {
    return false;
  }

  /** Most bytes that {@link #fill} takes beside its inputs and its result. */
  long scratchBytes(Region out);
}
