package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * Adjustments of the picture below.
 *
 * @param adjustments done in order; at least one
 */
public record Adjust(List<Adjustment> adjustments) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Adjust> SHAPE =
      Shape.mapping(
              Adjust.class,
              "adjust",
              "Adjustments of the picture below, done in order.",
              Field.of(
                      "adjustments",
                      new Kind.Items(Adjustment.KIND, "adjustment", 1, Limits.ADJUSTMENTS))
                  .key("adjust")
                  .principal()
                  .says("The adjustments, one key each.")
                  .example("[{ exposure: 0.3 }, { saturation: 1.1 }]"))
          .identity(adjust -> adjust.adjustments().stream().allMatch(Shape::isIdentityOf))
          .example("{ adjust: [{ exposure: 0.3 }], mask: { except: [sky] } }");

  /** Copies the list. */
  public Adjust {
    adjustments = List.copyOf(adjustments);
  }
}
