package org.duskply.engine;

import org.duskply.engine.frame.FrameInfo;
import org.duskply.recipe.Size;
import org.jspecify.annotations.Nullable;

/**
 * How the grid on which a recipe's numbers were read lies on the base: pixels of the base for one
 * of the grid.
 */
final class GridFit {
  private GridFit() {}

  /**
   * The scale; told to {@code found} where it is not 1, and as a problem where the shapes differ by
   * a pixel or more.
   */
  static double scale(@Nullable Size grid, FrameInfo base, Found found) {
    if (grid == null || grid.width() == base.width() && grid.height() == base.height()) {
      return 1;
    }
    double scale = (double) base.width() / grid.width();
    String sizes =
        "The grid is "
            + grid.width()
            + " × "
            + grid.height()
            + " and the base "
            + base.width()
            + " × "
            + base.height()
            + " pixels";
    if (Math.abs(grid.height() * scale - base.height()) >= 1) {
      found.problem(
          "grid",
          sizes + ": another shape. Write the size of the picture that the numbers were read on.");
    } else {
      found.notice(
          "grid", sizes + ": all positions and lengths are scaled by " + (float) scale + ".");
    }
    return scale;
  }
}
