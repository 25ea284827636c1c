package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;

/**
 * A frame laid over the picture below by a blend mode, in linear light or in encoded values.
 *
 * @param frame name of the frame
 * @param blend how it is combined
 * @param blendIn what the mode's formula is given: linear light, or encoded values whose result is
 *     then taken back
 * @param treat adjustments of the incoming frame, in order
 */
public record Lay(String frame, Blend blend, Axis blendIn, List<Adjustment> treat) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Lay> SHAPE =
      Shape.mapping(
              Lay.class,
              "lay",
              "A frame laid over the picture below by a blend mode.",
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .key("lay")
                  .principal()
                  .says("The frame.")
                  .example("late-sky"),
              Field.word("blend", Blend.values())
                  .byDefault(Blend.NORMAL)
                  .says("How the two are combined: the modes of W3C Compositing and Blending.")
                  .example("plus-lighter"),
              Field.word("blendIn", Axis.LINEAR, Axis.ENCODED)
                  .byDefault(Axis.LINEAR)
                  .says(
                      "What the mode combines: linear is light as it adds up, encoded the values as"
                          + " a screen is sent them. The step is mixed in linear light either way.")
                  .example("encoded"),
              Treat.FIELD)
          .example("{ lay: late-sky, mask: sky, blend: normal }");

  /** Copies the list. */
  public Lay {
    treat = List.copyOf(treat);
  }
}
