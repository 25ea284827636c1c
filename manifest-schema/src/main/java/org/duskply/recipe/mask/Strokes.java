package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * Strokes of a round brush. Where several meet they add up as layers of paint do: {@code 1 − Π(1 −
 * v)}.
 *
 * @param strokes at least one
 */
public record Strokes(List<Stroke> strokes) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Strokes> SHAPE =
      Shape.mapping(
              Strokes.class,
              "strokes",
              "Strokes of a round brush; where several meet, each covers a share of what the others"
                  + " left.",
              Field.list("strokes", "stroke", 1, Limits.MEMBERS, () -> Stroke.SHAPE)
                  .principal()
                  .says("The strokes.")
                  .example("[{ points: \"120,300 180,340\", radius: 40, soft: 0.7 }]"))
          .example("strokes: [{ points: \"120,300 180,340\", radius: 40, soft: 0.7 }]");

  /** Copies the list. */
  public Strokes {
    strokes = List.copyOf(strokes);
  }
}
