package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * Distance from grey in Oklab.
 *
 * @param factor 0 is grey, 1 leaves the picture
 */
public record Saturation(double factor) implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Saturation> SHAPE =
      Shape.mapping(
              Saturation.class,
              "saturation",
              "Strength of colours: their distance from grey in Oklab.",
              Field.number("factor")
                  .from(0)
                  .to(4)
                  .principal()
                  .says("0 is grey, 1 leaves the picture.")
                  .example("1.1"))
          .identity(saturation -> saturation.factor() == 1)
          .example("saturation: 1.1");
}
