package org.duskply.engine.step;

/**
 * The rectangle of the grid that the finished picture shows, in pixels of the grid: what a vignette
 * without a centre of its own is measured by.
 *
 * @param left of its left edge
 * @param top of its top edge
 * @param width more than 0
 * @param height more than 0
 */
public record Extent(double left, double top, double width, double height) {
  /** A rectangle from the grid's origin on. */
  public static Extent ofSize(double width, double height) {
    return new Extent(0, 0, width, height);
  }

  double centreX() {
    return left + width / 2;
  }

  double centreY() {
    return top + height / 2;
  }

  double halfDiagonal() {
    return StrictMath.hypot(width, height) / 2;
  }
}
