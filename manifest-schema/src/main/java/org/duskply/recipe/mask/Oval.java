package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * Where an ellipse lies and how large it is.
 *
 * @param centre its centre on the grid
 * @param radii half its width and half its height, before it is turned
 * @param turn degrees by which it is turned about its centre, clockwise as seen
 */
public record Oval(Point centre, Radii radii, double turn) {
  /** How a recipe writes it. */
  public static final Shape<Oval> SHAPE =
      Shape.mapping(
              Oval.class,
              "oval",
              "Where an ellipse lies and how large it is.",
              Field.of("centre", new Kind.Nested(() -> Point.SHAPE))
                  .says("Its centre.")
                  .example("[3000, 2000]"),
              Field.of("radii", new Kind.Nested(() -> Radii.SHAPE))
                  .says("Half its width and half its height, before it is turned.")
                  .example("[900, 500]"),
              Field.number("turn")
                  .from(-360)
                  .to(360)
                  .in(Unit.DEGREES)
                  .byDefault(0.0)
                  .says("How far it is turned about its centre, clockwise as seen.")
                  .example("12"))
          .example("{ centre: [3000, 2000], radii: [900, 500], turn: 12 }");
}
