package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;

/**
 * Where a gradient begins and ends.
 *
 * @param from where it is 0, and beyond
 * @param to where it is 1, and beyond; another position than {@code from}
 * @param ease how it rises between them
 */
public record Ramp(Point from, Point to, Ease ease) {
  /** What counts as the same position, in pixels of the grid. */
  private static final double NEAREST = 1e-3;

  /** How a recipe writes it. */
  public static final Shape<Ramp> SHAPE =
      Shape.mapping(
              Ramp.class,
              "ramp",
              "Where a gradient begins and ends.",
              Field.of("from", new Kind.Nested(() -> Point.SHAPE))
                  .says("Where it is 0, and beyond.")
                  .example("[0, 900]"),
              Field.of("to", new Kind.Nested(() -> Point.SHAPE))
                  .says("Where it is 1, and beyond.")
                  .example("[0, 1300]"),
              Field.word("ease", Ease.values())
                  .byDefault(Ease.LINEAR)
                  .says("How it rises: evenly, or without a kink at either end.")
                  .example("smooth"))
          .rules(new Rule(List.of("from", "to"), Ramp::faults))
          .example("{ from: [0, 900], to: [0, 1300] }");

  private static List<Fault> faults(Values values) {
    Point from = values.get("from", Point.class);
    Point to = values.get("to", Point.class);
    double apart = Math.max(Math.abs(to.x() - from.x()), Math.abs(to.y() - from.y()));
    return apart < NEAREST
        ? List.of(
            new Fault(
                "to",
                "a gradient needs two different positions: this one begins and ends at the same",
                "the position of `from`",
                "another position than `from`"))
        : List.of();
  }
}
