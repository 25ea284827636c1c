package org.duskply.recipe;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * A size in pixels.
 *
 * @param width at least 1
 * @param height at least 1
 */
public record Size(int width, int height) {
  /** How a recipe writes it. */
  public static final Shape<Size> SHAPE =
      Shape.row(
          Size.class,
          "size",
          "A size as [width, height].",
          Field.whole("width", 1, Limits.SIDE)
              .in(Unit.PIXELS)
              .says("From left to right.")
              .example("6000"),
          Field.whole("height", 1, Limits.SIDE)
              .in(Unit.PIXELS)
              .says("From top to bottom.")
              .example("4000"));
}
