package org.duskply.engine.mask;

import org.duskply.engine.plan.Node;
import org.duskply.recipe.mask.Polygon;

/** {@code polygon}: the inside of straight edges. */
final class PolygonMask {
  private PolygonMask() {}

  static Node prepare(Polygon polygon, double scale) {
    Outline outline = Outline.ofPolygon(polygon.points(), scale);
    return new OutlineNode(OutlineRaster.of(outline, polygon.rule()), scale + " " + polygon);
  }
}
