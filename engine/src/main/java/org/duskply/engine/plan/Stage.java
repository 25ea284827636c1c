package org.duskply.engine.plan;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;

/**
 * A node that is finished, band by band, before others read it: a fused run, an area operation, or
 * a frame as planes. Immutable.
 */
public sealed interface Stage permits FusedStage, AreaStage, FrameStage {
  /** The node that is finished here. */
  Node node();

  /** Reports what is read to make {@code out}, by indices of the plan. */
  void needs(Region out, StageNeeds needs);

  /**
   * Makes {@code out}.
   *
   * @param in what is read
   * @param stop asked before each chunk
   */
  void fill(StageInputs in, Planes out, Stop stop);

  /** Most bytes that {@link #fill} takes beside its inputs and its result. */
  long scratchBytes(Region out);

  /** Roughly how long {@link #fill} takes, in nanoseconds of one core; for progress alone. */
  double costNanos(Region out);

  /** Whether it is a mask that is known to be 1 at every pixel of {@code out}. */
  default boolean full(Region out) {
    return false;
  }

  /** Whether it is a mask. */
  default boolean mask() {
    return node().planes() == 1;
  }

  /** Whether it is finished to save memory alone, so that it is not worth keeping. */
  default boolean passing() {
    return false;
  }

  /** Bytes of its result over {@code out}, with the runs of a mask. */
  default long resultBytes(Region out) {
    return Planes.bytes(out, node().planes()) + (mask() ? Runs.bytes(out) : 0);
  }
}
