package org.duskply.recipe.adjust;

import java.util.List;

/**
 * A monotone curve through points (Fritsch and Butland 1984).
 *
 * @param points x strictly increasing from 0 or more, the last above 0; y not decreasing
 * @param channel what it acts on
 * @param axis whether its points are read on the encoded or the linear axis
 */
public record Curve(List<CurvePoint> points, Channel channel, Axis axis) implements Adjustment {}
