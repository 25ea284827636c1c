package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * More or less light: {@code x·2^stops}.
 *
 * @param stops plus brightens
 */
public record Exposure(double stops) implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Exposure> SHAPE =
      Shape.mapping(
              Exposure.class,
              "exposure",
              "More or less light: linear values times 2 to the power of the stops.",
              Field.number("stops")
                  .from(-20)
                  .to(20)
                  .in(Unit.STOPS)
                  .principal()
                  .says("Plus brightens, minus darkens.")
                  .example("0.3"))
          .identity(exposure -> exposure.stops() == 0)
          .example("exposure: 0.3");
}
