package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;

/**
 * A frame with a flash pop, blended by lighten: the greater of the picture below and the frame,
 * channel by channel or by luminance.
 *
 * @param frame name of the frame
 * @param compare by what the greater is found
 * @param treat adjustments of the incoming frame, in order
 */
public record Pop(String frame, Compare compare, List<Adjustment> treat) implements Verb {
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
              Field.word("compare", Compare.values())
                  .byDefault(Compare.CHANNELS)
                  .says(
                      "channels takes the greater in each channel alone; luminance takes the"
                          + " brighter colour as a whole, softly where they are about equal.")
                  .example("luminance"),
              Treat.FIELD)
          .example("{ pop: pop-hull, mask: hull, opacity: 0.85 }");

  /** Copies the list. */
  public Pop {
    treat = List.copyOf(treat);
  }
}
