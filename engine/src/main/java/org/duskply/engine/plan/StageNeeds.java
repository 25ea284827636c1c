package org.duskply.engine.plan;

import org.duskply.engine.pixel.Region;

/** Told what a stage reads. */
public interface StageNeeds {
  /**
   * Pixels {@code part} of the plan's frame {@code frame} are read as native samples, in the file's
   * own size.
   */
  void frame(int frame, Region part);

  /** Pixels {@code part} of the plan's stage {@code stage} are read. */
  void stage(int stage, Region part);
}
