package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.jspecify.annotations.Nullable;

/**
 * How far a flash reached: by how many stops one frame is brighter than another.
 *
 * @param frame the frame with the flash
 * @param ambient the frame without it; absent: the base
 * @param over stops from which on it shows fully; at half of that, not at all
 */
public record FlashReach(String frame, @Nullable String ambient, double over) {
  /** How a recipe writes it. */
  public static final Shape<FlashReach> SHAPE =
      Shape.mapping(
              FlashReach.class,
              "reach of a flash",
              "By how many stops a frame with a flash pop is brighter than one without.",
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .says("The frame with the flash.")
                  .example("pop-hull"),
              Field.of("ambient", new Kind.Mention(NameList.FRAMES))
                  .optional("the base")
                  .says("The frame without the flash, exposed alike.")
                  .example("dusk"),
              Field.number("over")
                  .above(0)
                  .to(20)
                  .in(Unit.STOPS)
                  .byDefault(0.5)
                  .says("From so many stops on the mask shows fully; at half of that, not at all.")
                  .example("0.5"))
          .example("{ frame: pop-hull, ambient: dusk, over: 0.5 }");
}
