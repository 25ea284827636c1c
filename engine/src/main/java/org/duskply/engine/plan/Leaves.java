package org.duskply.engine.plan;

import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;

/** What a program reads while it runs: frames as native samples, and stages that are finished. */
public interface Leaves {
  /** Native samples of frame {@code leaf} that hold row {@code y} of the full-size frame. */
  Samples samples(int leaf, int y);

  /**
   * Planes of stage {@code leaf} that hold what is needed of row {@code y}; absent where nothing of
   * the row is in its footprint.
   */
  @Nullable Planes planes(int leaf, int y);

  /**
   * The runs of mask stage {@code leaf} in row {@code y}; absent where the row is outside its
   * footprint.
   */
  @Nullable Runs runs(int leaf, int y);
}
