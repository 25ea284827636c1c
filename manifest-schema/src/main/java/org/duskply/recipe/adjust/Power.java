package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * A power of the encoded value, odd below 0: below 1 lifts the middle, above 1 lowers it.
 *
 * @param power above 0
 */
public record Power(double power) implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Power> SHAPE =
      Shape.mapping(
              Power.class,
              "power",
              "A power of the encoded value; the darkest and the brightest stay.",
              Field.number("power")
                  .from(0.05)
                  .to(20)
                  .principal()
                  .says("Below 1 lifts the middle, above 1 lowers it.")
                  .example("0.9"))
          .identity(power -> power.power() == 1)
          .example("power: 0.9");
}
