package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;

/**
 * A frame with a flash pop, blended by lighten: the greater of the picture below and the frame,
 * channel by channel.
 *
 * @param frame name of the frame
 * @param treat adjustments of the incoming frame, in order
 */
public record Pop(String frame, List<Adjustment> treat) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Pop> SHAPE =
      Shape.mapping(
              Pop.class,
              "pop",
              "A frame with a flash pop, blended by lighten: in each channel the greater of the"
                  + " picture below and the frame.",
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .key("pop")
                  .principal()
                  .says("The frame.")
                  .example("pop-hull"),
              Field.of(
                      "treat", new Kind.Items(Adjustment.KIND, "adjustment", 0, Limits.ADJUSTMENTS))
                  .byDefault(List.of())
                  .says("Adjustments of the incoming frame, done in order before it is blended.")
                  .example("[{ contrast: 0.15 }]"))
          .example("{ pop: pop-hull, mask: hull, opacity: 0.85 }");

  /** Copies the list. */
  public Pop {
    treat = List.copyOf(treat);
  }
}
