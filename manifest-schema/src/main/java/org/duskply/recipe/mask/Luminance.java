package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * Where a picture is of some brightness.
 *
 * @param range which brightness, and of which picture
 */
public record Luminance(LuminanceRange range) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Luminance> SHAPE =
      Shape.mapping(
              Luminance.class,
              "luminance",
              "Where a frame, or the picture below the step that uses the mask, is of some"
                  + " brightness.",
              Field.of("range", new Kind.Nested(() -> LuminanceRange.SHAPE))
                  .key("luminance")
                  .principal()
                  .says("Which brightness, and of which picture.")
                  .example("{ to: 0.25, soft: 0.1 }"))
          .example("luminance: { to: 0.25, soft: 0.1 }");

  @Override
  public boolean readsBelow() {
    return range.frame() == null;
  }
}
