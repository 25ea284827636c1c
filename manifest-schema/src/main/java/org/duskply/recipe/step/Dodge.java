package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * The picture below brightened by stops.
 *
 * @param shade how far, and in which colour of light
 */
public record Dodge(Shade shade) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Dodge> SHAPE =
      Shape.mapping(
              Dodge.class,
              "dodge",
              "The picture below made brighter by stops, as if more light had fallen there.",
              Field.of("shade", new Kind.Nested(() -> Shade.SHAPE))
                  .key("dodge")
                  .principal()
                  .says("By how many stops, and in which colour of light.")
                  .example("{ stops: 0.4, gel: 120 }"))
          .identity(dodge -> Shape.isIdentityOf(dodge.shade()))
          .example("{ dodge: 0.4, mask: hull }");

  /** The same as adjustments of the picture below, done in order. */
  public List<Adjustment> adjustments() {
    return shade.adjustments(1);
  }
}
