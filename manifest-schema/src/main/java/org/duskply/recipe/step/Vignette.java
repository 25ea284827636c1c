package org.duskply.recipe.step;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * The picture below darkened or brightened towards its corners.
 *
 * @param falloff by how much, and from where to where
 */
public record Vignette(Falloff falloff) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Vignette> SHAPE =
      Shape.mapping(
              Vignette.class,
              "vignette",
              "The picture below made darker or brighter towards its corners, by stops.",
              Field.of("falloff", new Kind.Nested(() -> Falloff.SHAPE))
                  .key("vignette")
                  .principal()
                  .says("By how many stops, and from where to where.")
                  .example("{ stops: -0.6, begins: 0.4, full: 1 }"))
          .identity(vignette -> Shape.isIdentityOf(vignette.falloff()))
          .example("{ vignette: -0.6 }");
}
