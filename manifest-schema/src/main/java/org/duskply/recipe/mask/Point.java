package org.duskply.recipe.mask;

import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * A position on the grid: pixels, x right, y down, origin at the outer corner of the top-left
 * pixel.
 *
 * @param x across
 * @param y down
 */
public record Point(double x, double y) {
  /** How a recipe writes it. */
  public static final Shape<Point> SHAPE =
      Shape.row(
          Point.class,
          "point",
          "A position as [x, y] in pixels of the grid: from the left edge and from the top.",
          Field.number("x")
              .from(-Limits.COORDINATE)
              .to(Limits.COORDINATE)
              .in(Unit.PIXELS)
              .says("From the left edge of the picture.")
              .example("1210"),
          Field.number("y")
              .from(-Limits.COORDINATE)
              .to(Limits.COORDINATE)
              .in(Unit.PIXELS)
              .says("From the top edge of the picture.")
              .example("2204"));
}
