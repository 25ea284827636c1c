package org.duskply.recipe.mask;

/**
 * One piece of an outline as {@link PathData} reads it: absolute, smooth forms written out,
 * horizontal and vertical lines as lines. It starts where the piece before it ended; after a {@link
 * Close} that is the start of the subpath that was closed.
 */
public sealed interface PathSegment {
  /**
   * The start of a new subpath.
   *
   * @param to where it starts
   */
  record Move(Point to) implements PathSegment {}

  /**
   * A straight line.
   *
   * @param to where it ends
   */
  record Line(Point to) implements PathSegment {}

  /**
   * A quadratic Bézier curve.
   *
   * @param control its control point
   * @param to where it ends
   */
  record Quadratic(Point control, Point to) implements PathSegment {}

  /**
   * A cubic Bézier curve.
   *
   * @param first control point of its start
   * @param second control point of its end
   * @param to where it ends
   */
  record Cubic(Point first, Point second, Point to) implements PathSegment {}

  /**
   * An arc of an ellipse, in the endpoint form of SVG 2. Radii too small to reach are meant to be
   * grown until they do; a radius of 0 makes it a straight line.
   *
   * @param across radius along the ellipse's own x axis, at least 0
   * @param down radius along its own y axis, at least 0
   * @param turn degrees by which its x axis is turned, clockwise as seen
   * @param large whether the arc of more than half a turn is meant
   * @param clockwise whether it runs clockwise as seen (SVG's sweep flag)
   * @param to where it ends
   */
  record Arc(double across, double down, double turn, boolean large, boolean clockwise, Point to)
      implements PathSegment {}

  /** A straight line back to the start of the subpath. */
  record Close() implements PathSegment {}
}
