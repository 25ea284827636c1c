package org.duskply.recipe.adjust;

import java.util.List;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;

/**
 * The two ends of the encoded axis drawn in: what was {@code black} becomes black, what was {@code
 * white} becomes white, and all between is spread evenly. What was darker stays black, what was
 * brighter goes on above white.
 *
 * @param black encoded value that becomes 0
 * @param white encoded value that becomes 1, at least 0.05 above
 */
public record Ends(double black, double white) implements Adjustment {
  private static final double LEAST_APART = 0.05;

  /** How a recipe writes it. */
  public static final Shape<Ends> SHAPE =
      Shape.mapping(
              Ends.class,
              "ends",
              "Black and white points: the two ends of the encoded axis drawn in.",
              Field.number("black")
                  .from(0)
                  .to(0.95)
                  .byDefault(0.0)
                  .says("The brightness, as the screen shows it, that becomes black.")
                  .example("0.02"),
              Field.number("white")
                  .from(0.05)
                  .to(4)
                  .byDefault(1.0)
                  .says("The brightness that becomes white; above 1 it darkens.")
                  .example("0.97"))
          .rules(new Rule(List.of("black", "white"), Ends::faults))
          .identity(ends -> ends.black == 0 && ends.white == 1)
          .example("ends: { black: 0.02, white: 0.97 }");

  private static List<Fault> faults(Values values) {
    double black = values.get("black", Double.class);
    double white = values.get("white", Double.class);
    return white - black >= LEAST_APART
        ? List.of()
        : List.of(
            new Fault(
                "",
                "`white` must be at least 0.05 above `black`: it is the brighter of the two ends",
                black + " to " + white,
                "black to white"));
  }
}
