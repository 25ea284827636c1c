package org.duskply.engine.deliver;

import org.duskply.recipe.Size;

/**
 * The size of a picture whose longer side is given: {@code long-edge} of a deliverable. The shorter
 * side is {@code short·edge/long}, rounded half up, at least 1, in whole numbers: no float decides
 * a size. An edge longer than the picture's own enlarges it.
 */
public final class LongEdge {
  private LongEdge() {}

  /**
   * The size.
   *
   * @param width of the picture, at least 1
   * @param height of the picture, at least 1
   * @param edge its longer side as asked, at least 1
   */
  public static Size size(int width, int height, int edge) {
    return width >= height
        ? new Size(edge, shorter(height, width, edge))
        : new Size(shorter(width, height, edge), edge);
  }

  /** ⌊s·e/l + ½⌋ = ⌊(2·s·e + l)/(2·l)⌋; 2·s·e + l stays below 2⁶³. */
  private static int shorter(int side, int longer, int edge) {
    long twice = 2L * longer;
    return (int) Math.max(1, (2L * side * edge + longer) / twice);
  }
}
