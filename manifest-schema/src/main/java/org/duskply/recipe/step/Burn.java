package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * The picture below darkened by stops.
 *
 * @param shade how far, and in which colour of light
 */
public record Burn(Shade shade) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Burn> SHAPE =
      Shape.mapping(
              Burn.class,
              "burn",
              "The picture below made darker by stops, as if less light had fallen there.",
              Field.of("shade", new Kind.Nested(() -> Shade.SHAPE))
                  .key("burn")
                  .principal()
                  .says("By how many stops (plus darkens), and in which colour of light.")
                  .example("0.3"))
          .identity(burn -> Shape.isIdentityOf(burn.shade()))
          .example("{ burn: { stops: 0.3, gel: -40 }, mask: sky }");

  /** The same as adjustments of the picture below, done in order. */
  public List<Adjustment> adjustments() {
    return shade.adjustments(-1);
  }
}
