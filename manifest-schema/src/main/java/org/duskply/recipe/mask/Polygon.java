package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * The inside of a polygon, each pixel by the exact share of its area.
 *
 * @param points corners in order, at least three; closed by itself
 * @param rule what counts as inside where the outline crosses itself
 */
public record Polygon(List<Point> points, FillRule rule) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Polygon> SHAPE =
      Shape.mapping(
              Polygon.class,
              "polygon",
              "The inside of a polygon.",
              Field.of("points", new Kind.Positions(() -> Point.SHAPE, 3, Limits.POINTS))
                  .key("polygon")
                  .principal()
                  .says("The corners in order, at least three; the last joins the first.")
                  .example("\"1210,2204 1633,2190 1702,2410 1188,2422\""),
              Field.word("rule", FillRule.values())
                  .byDefault(FillRule.NONZERO)
                  .says("What counts as inside where the outline crosses itself, as in SVG.")
                  .example("evenodd"))
          .example("polygon: \"1210,2204 1633,2190 1702,2410 1188,2422\"");

  /** Copies the list. */
  public Polygon {
    points = List.copyOf(points);
  }
}
