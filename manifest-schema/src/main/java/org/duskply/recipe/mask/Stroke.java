package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * One stroke of a round brush along straight lines from point to point; one point is a dab.
 *
 * @param points where the brush goes, at least one
 * @param radius of the brush, in pixels of the grid
 * @param soft share of the radius over which the stroke falls to nothing, 0 to 1
 * @param strength of the stroke, 0 to 1
 */
public record Stroke(List<Point> points, double radius, double soft, double strength) {
  /** The greatest radius. */
  private static final double WIDEST = 10_000;

  /** How a recipe writes it. */
  public static final Shape<Stroke> SHAPE =
      Shape.mapping(
              Stroke.class,
              "stroke",
              "A stroke of a round brush along straight lines from point to point; one point is a"
                  + " dab.",
              Field.of("points", new Kind.Positions(() -> Point.SHAPE, 1, Limits.POINTS))
                  .says("Where the brush goes, from point to point.")
                  .example("\"120,300 180,340\""),
              Field.number("radius")
                  .above(0)
                  .to(WIDEST)
                  .in(Unit.PIXELS)
                  .says("Radius of the brush.")
                  .example("40"),
              Field.number("soft")
                  .from(0)
                  .to(1)
                  .byDefault(0.0)
                  .says("Share of the radius over which the stroke falls to nothing, 1 for all.")
                  .example("0.7"),
              Field.number("strength")
                  .from(0)
                  .to(1)
                  .byDefault(1.0)
                  .says("How much of the stroke shows.")
                  .example("0.6"))
          .example("{ points: \"120,300 180,340\", radius: 40, soft: 0.7, strength: 0.6 }");

  /** Copies the list. */
  public Stroke {
    points = List.copyOf(points);
  }
}
