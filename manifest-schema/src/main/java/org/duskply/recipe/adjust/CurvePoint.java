package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * A point of a curve.
 *
 * @param x value going in, 0 to 1 on the curve's axis
 * @param y value coming out, on the same axis
 */
public record CurvePoint(double x, double y) {
  /** How a recipe writes it. */
  public static final Shape<CurvePoint> SHAPE =
      Shape.row(
          CurvePoint.class,
          "curve-point",
          "A point of a curve as [x, y].",
          Field.number("x").from(0).to(100).says("Value going in.").example("0.5"),
          Field.number("y").from(0).to(100).says("Value coming out.").example("0.42"));
}
