package org.duskply.recipe.adjust;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;

/**
 * A monotone curve through points (Fritsch and Butland 1984).
 *
 * @param points x strictly increasing from 0 or more, the last above 0; y not decreasing
 * @param channel what it acts on
 * @param axis whether its points are read on the encoded or the linear axis
 */
public record Curve(List<CurvePoint> points, Channel channel, Axis axis) implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Curve> SHAPE =
      Shape.mapping(
              Curve.class,
              "curve",
              "A smooth curve through points that never turns back (Fritsch and Butland 1984).",
              Field.list("points", "point", 2, Limits.CURVE_POINTS, () -> CurvePoint.SHAPE)
                  .says(
                      "[x, y] for each point, 0 black and 1 white; x rises from point to point and"
                          + " y never falls.")
                  .example("[[0, 0], [0.5, 0.42], [1, 0.95]]"),
              Field.word("channel", Channel.values())
                  .byDefault(Channel.RGB)
                  .says("What the curve acts on: each of the three channels, luminance, or one.")
                  .example("luminance"),
              Field.word("axis", Axis.values())
                  .byDefault(Axis.ENCODED)
                  .says(
                      "Whether its numbers are read as the screen shows them (0.5 is a middle"
                          + " grey) or in linear light.")
                  .example("linear"))
          .rules(new Rule(List.of("points"), Curve::faults))
          .identity(Curve::straight)
          .example("curve: { points: [[0, 0], [0.4, 0.46], [1, 1]], channel: luminance }");

  /** Copies the list. */
  public Curve {
    points = List.copyOf(points);
  }

  private boolean straight() {
    return points.stream().allMatch(point -> point.x() == point.y());
  }

  private static List<Fault> faults(Values values) {
    List<Fault> faults = new ArrayList<>();
    List<?> points = values.get("points", List.class);
    for (int i = 1; i < points.size(); i++) {
      CurvePoint before = (CurvePoint) points.get(i - 1);
      CurvePoint here = (CurvePoint) points.get(i);
      String at = "points/#" + (i + 1);
      if (here.x() <= before.x()) {
        faults.add(
            new Fault(
                at,
                "the x of a curve's points must rise: this one is not to the right of the point"
                    + " before it",
                String.valueOf(here.x()),
                "more than " + before.x()));
      }
      if (here.y() < before.y()) {
        faults.add(
            new Fault(
                at,
                "a curve may not turn back: the y of this point is below that of the point before"
                    + " it",
                String.valueOf(here.y()),
                "at least " + before.y()));
      }
    }
    return faults;
  }
}
