package org.duskply.engine.render;

import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.pixel.Region;

/** Finds the units of rows. */
final class Units {
  private Units() {}

  /** Told which pixels lie in a unit. */
  interface Part {
    void of(int unit, Region part);
  }

  /** Cuts pixels of a frame into its units, from the top down. */
  static void cut(FrameSource source, Region pixels, Part told) {
    if (!pixels.empty()) {
      int last = at(source, pixels.bottom() - 1);
      for (int unit = at(source, pixels.top()); unit <= last; unit++) {
        told.of(unit, source.unit(unit).meet(pixels));
      }
    }
  }

  /**
   * The unit of {@code source} that holds row {@code y}, which is in the picture: bisection, since
   * units lie from the top down.
   */
  static int at(FrameSource source, int y) {
    int low = 0;
    int high = source.units() - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (source.unit(middle).bottom() <= y) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
