package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * The inside of an ellipse, each pixel by the share of its area.
 *
 * @param oval where it lies and how large it is
 */
public record Ellipse(Oval oval) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Ellipse> SHAPE =
      Shape.mapping(
              Ellipse.class,
              "ellipse",
              "The inside of an ellipse.",
              Field.of("oval", new Kind.Nested(() -> Oval.SHAPE))
                  .key("ellipse")
                  .principal()
                  .says("Its centre, its radii, and how far it is turned.")
                  .example("{ centre: [3000, 2000], radii: [900, 500], turn: 12 }"))
          .example("ellipse: { centre: [3000, 2000], radii: [900, 500], turn: 12 }");
}
