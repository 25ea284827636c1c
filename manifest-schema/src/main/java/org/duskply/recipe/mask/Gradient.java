package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * A gradient along a line, from 0 to 1.
 *
 * @param ramp where it begins and ends
 */
public record Gradient(Ramp ramp) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Gradient> SHAPE =
      Shape.mapping(
              Gradient.class,
              "gradient",
              "A gradient along a line: 0 at its beginning, 1 at its end.",
              Field.of("ramp", new Kind.Nested(() -> Ramp.SHAPE))
                  .key("gradient")
                  .principal()
                  .says("Where it begins and where it ends.")
                  .example("{ from: [0, 900], to: [0, 1300] }"))
          .example("gradient: { from: [0, 900], to: [0, 1300], ease: smooth }");
}
