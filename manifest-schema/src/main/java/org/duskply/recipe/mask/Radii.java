package org.duskply.recipe.mask;

import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * The two radii of an ellipse, before it is turned.
 *
 * @param across half its width
 * @param down half its height
 */
public record Radii(double across, double down) {
  /** How a recipe writes it. */
  public static final Shape<Radii> SHAPE =
      Shape.row(
          Radii.class,
          "radii",
          "Half the width and half the height of an ellipse, before it is turned.",
          Field.number("across")
              .above(0)
              .to(Limits.COORDINATE)
              .in(Unit.PIXELS)
              .says("Half its width.")
              .example("900"),
          Field.number("down")
              .above(0)
              .to(Limits.COORDINATE)
              .in(Unit.PIXELS)
              .says("Half its height.")
              .example("500"));
}
