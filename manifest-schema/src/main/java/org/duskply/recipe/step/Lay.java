package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;

/**
 * A frame laid over the picture below by a blend mode, in linear light.
 *
 * @param frame name of the frame
 * @param blend how it is combined
 * @param treat adjustments of the incoming frame, in order
 */
public record Lay(String frame, Blend blend, List<Adjustment> treat) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Lay> SHAPE =
      Shape.mapping(
              Lay.class,
              "lay",
              "A frame laid over the picture below by a blend mode, in linear light.",
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .key("lay")
                  .principal()
                  .says("The frame.")
                  .example("late-sky"),
              Field.word("blend", Blend.values())
                  .byDefault(Blend.NORMAL)
                  .says("How the two are combined: the modes of W3C Compositing and Blending.")
                  .example("plus-lighter"),
              Field.of(
                      "treat", new Kind.Items(Adjustment.KIND, "adjustment", 0, Limits.ADJUSTMENTS))
                  .byDefault(List.of())
                  .says("Adjustments of the incoming frame, done in order before it is blended.")
                  .example("[{ contrast: 0.15 }]"))
          .example("{ lay: late-sky, mask: sky, blend: normal }");

  /** Copies the list. */
  public Lay {
    treat = List.copyOf(treat);
  }
}
