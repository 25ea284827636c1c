package org.duskply.engine.plan;

import org.duskply.engine.pixel.Region;

/** Told what a program reads of its leaves. */
interface LeafNeeds {
  /** Pixels {@code part} of the program's frame {@code leaf} are read. */
  void frame(int leaf, Region part);

  /** Pixels {@code part} of the program's stage {@code leaf} are read. */
  void stage(int leaf, Region part);
}
