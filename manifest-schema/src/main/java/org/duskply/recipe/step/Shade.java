package org.duskply.recipe.step;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.jspecify.annotations.Nullable;

/**
 * How far a dodge or burn goes, and in which colour of light.
 *
 * @param stops 0 or more
 * @param gel the colour; absent: as it is
 */
public record Shade(double stops, @Nullable Gel gel) {
  /** How a recipe writes it. */
  public static final Shape<Shade> SHAPE =
      Shape.mapping(
              Shade.class,
              "shade",
              "How far a dodge or burn goes, and in which colour of light.",
              Field.number("stops")
                  .from(0)
                  .to(20)
                  .in(Unit.STOPS)
                  .principal()
                  .says("How much brighter a dodge makes it, or how much darker a burn.")
                  .example("0.4"),
              Field.of("gel", new Kind.Nested(() -> Gel.SHAPE))
                  .optional("none")
                  .says("A gel in front of the light, as in adjustments: plus warms.")
                  .example("120"))
          .identity(shade -> shade.stops() == 0 && clear(shade.gel()))
          .example("{ stops: 0.4, gel: 120 }");

  private static boolean clear(@Nullable Gel gel) {
    return gel == null || Shape.isIdentityOf(gel);
  }

  /** As adjustments: the exposure, then the gel. */
  List<Adjustment> adjustments(double sign) {
    List<Adjustment> adjustments = new ArrayList<>(List.of(new Exposure(sign * stops)));
    if (gel != null) {
      adjustments.add(gel);
    }
    return adjustments;
  }
}
