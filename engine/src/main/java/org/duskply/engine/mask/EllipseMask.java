package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Affine;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Oval;
import org.duskply.recipe.mask.PathSegment;
import org.duskply.recipe.mask.Point;

/** {@code ellipse}: the inside of an ellipse, drawn as two arcs about its centre. */
final class EllipseMask {
  private EllipseMask() {}

  static Node prepare(Ellipse ellipse, double scale) {
    Oval oval = ellipse.oval();
    double across = oval.radii().across();
    double down = oval.radii().down();
    Point right = new Point(across, 0);
    Point left = new Point(-across, 0);
    List<PathSegment> segments =
        List.of(
            new PathSegment.Move(right),
            new PathSegment.Arc(across, down, 0, false, true, left),
            new PathSegment.Arc(across, down, 0, false, true, right));
    Affine map =
        Affine.scaling(scale, scale)
            .times(Affine.translation(oval.centre().x(), oval.centre().y()))
            .times(Affine.rotation(oval.turn()));
    Outline.Builder outline = new Outline.Builder();
    Flattener.flatten(segments, map, outline);
    return new OutlineNode(
        OutlineRaster.of(outline.build(), FillRule.NONZERO), scale + " " + ellipse);
  }
}
