package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * How light falls off from a centre to the corners. Distances are shares of half the diagonal: 0 at
 * the centre of the picture, 1 in its corners.
 *
 * @param stops in full; below 0 it darkens
 * @param begins up to this distance nothing changes
 * @param full from this distance on the change is full; at least {@code begins}
 * @param centre pixels of the grid; absent: the middle of the finished picture
 */
public record Falloff(double stops, double begins, double full, @Nullable Point centre) {
  /** How a recipe writes it. */
  public static final Shape<Falloff> SHAPE =
      Shape.mapping(
              Falloff.class,
              "falloff",
              "How light falls off from a centre to the corners.",
              Field.number("stops")
                  .from(-20)
                  .to(20)
                  .in(Unit.STOPS)
                  .principal()
                  .says("How much brighter it is in the end; minus darkens.")
                  .example("-0.6"),
              Field.number("begins")
                  .from(0)
                  .to(10)
                  .byDefault(0.4)
                  .says("How far out it begins: 0 is the centre, 1 the corners.")
                  .example("0.3"),
              Field.number("full")
                  .from(0)
                  .to(10)
                  .byDefault(1.0)
                  .says("How far out it has its full strength.")
                  .example("1.1"),
              Field.of("centre", new Kind.Nested(() -> Point.SHAPE))
                  .optional("the middle of the finished picture")
                  .says("What it falls off from, as [x, y].")
                  .example("[3000, 1800]"))
          .rules(new Rule(List.of("begins", "full"), Falloff::faults))
          .identity(falloff -> falloff.stops() == 0)
          .example("{ stops: -0.6, begins: 0.3 }");

  private static List<Fault> faults(Values values) {
    double begins = values.get("begins", Double.class);
    double full = values.get("full", Double.class);
    if (begins <= full) {
      return List.of();
    }
    return List.of(
        new Fault(
            "",
            "this vignette begins further out than it is full: `begins` may be at most `full`",
            "begins " + begins + ", full " + full,
            "begins at most full"));
  }
}
