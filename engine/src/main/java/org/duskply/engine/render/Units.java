package org.duskply.engine.render;

import org.duskply.engine.frame.FrameSource;

/** Finds the unit of a row. */
final class Units {
  private Units() {}

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
