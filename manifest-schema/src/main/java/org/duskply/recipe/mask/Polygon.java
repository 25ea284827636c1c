package org.duskply.recipe.mask;

import java.util.List;

/**
 * The inside of a polygon, each pixel by the exact share of its area.
 *
 * @param points corners in order, at least three; closed by itself
 * @param rule what counts as inside where the outline crosses itself
 */
public record Polygon(List<Point> points, FillRule rule) implements MaskKind {}
