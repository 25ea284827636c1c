package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * Where a picture is of some hue.
 *
 * @param range which hues, and of which picture
 */
public record Hues(HueRange range) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Hues> SHAPE =
      Shape.mapping(
              Hues.class,
              "hue",
              "Where a frame, or the picture below the step that uses the mask, is of some hue;"
                  + " what is all but grey has none.",
              Field.of("range", new Kind.Nested(() -> HueRange.SHAPE))
                  .key("hue")
                  .principal()
                  .says("Which hues, and of which picture.")
                  .example("{ centre: 255, width: 60, soft: 20 }"))
          .example("hue: { centre: 255, width: 60, soft: 20 }");

  @Override
  public boolean readsBelow() {
    return range.frame() == null;
  }
}
