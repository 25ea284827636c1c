package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * Where a flash reached.
 *
 * @param reach of which frame, over which, and by how much
 */
public record Flash(FlashReach reach) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Flash> SHAPE =
      Shape.mapping(
              Flash.class,
              "flash",
              "Where a frame with a flash pop is brighter than the same place without it.",
              Field.of("reach", new Kind.Nested(() -> FlashReach.SHAPE))
                  .key("flash")
                  .principal()
                  .says("Which frame, compared with which, and by how many stops.")
                  .example("{ frame: pop-hull, ambient: dusk, over: 0.5 }"))
          .example("flash: { frame: pop-hull, ambient: dusk, over: 0.5 }");
}
