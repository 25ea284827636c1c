package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;

/** The key {@code treat}, which is the same wherever light comes in. */
final class Treat {
  /** Adjustments of what comes in; none where it is left out. */
  static final Field FIELD =
      Field.of("treat", new Kind.Items(Adjustment.KIND, "adjustment", 0, Limits.ADJUSTMENTS))
          .byDefault(List.of())
          .says(
              "Adjustments of what comes in, done in order: of a frame before it is blended; of a"
                  + " group, the light that its steps add.")
          .example("[{ contrast: 0.15 }]");

  private Treat() {}
}
