package org.duskply.engine.plan;

import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;

/**
 * What a stage reads while it is filled, by indices of the plan. Only what {@link Stage#needs}
 * reported may be asked for.
 */
public interface StageInputs {
  /** Native samples of a frame that hold row {@code y} of the file's own size. */
  Samples samples(int frame, int y);

  /**
   * Planes of a stage that hold what is needed of row {@code y}; absent where it has nothing there.
   */
  @Nullable Planes planes(int stage, int y);

  /** The runs of a mask stage in row {@code y}; absent where it has nothing there. */
  @Nullable Runs runs(int stage, int y);

  /** All of {@code part} of a stage in one block, 0 where the stage has nothing. */
  Planes block(int stage, Region part);
}
