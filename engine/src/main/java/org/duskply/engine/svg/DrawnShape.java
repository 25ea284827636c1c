package org.duskply.engine.svg;

import java.util.List;
import org.duskply.engine.pixel.Affine;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.PathSegment;

/**
 * The outline of one shape of a drawing.
 *
 * @param segments in the shape's own coordinates; not empty
 * @param map from these to the grid
 * @param rule what the drawing says is inside where the outline crosses itself
 */
public record DrawnShape(List<PathSegment> segments, Affine map, FillRule rule) {
  /** Copies the list. */
  public DrawnShape {
    segments = List.copyOf(segments);
  }
}
