package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * A soft end for what is brighter than white: from {@code begins} on the light is bent more and
 * more, and what was {@code white-at} comes out as white (Reinhard et al. 2002, eq. 4).
 *
 * @param begins linear value from which on light is bent; all below stays
 * @param whiteAt linear value that becomes 1, as does all above it
 */
public record Shoulder(double begins, double whiteAt) implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Shoulder> SHAPE =
      Shape.mapping(
              Shoulder.class,
              "shoulder",
              "A soft end for what is brighter than white, so that lamps roll off.",
              Field.number("begins")
                  .from(0)
                  .to(0.95)
                  .says("The value in linear light from which on it bends; all below stays.")
                  .example("0.6"),
              Field.number("whiteAt")
                  .from(1)
                  .to(1000)
                  .says("The value in linear light that becomes white, 1; brighter is white too.")
                  .example("6"))
          .example("shoulder: { begins: 0.6, white-at: 6 }");
}
