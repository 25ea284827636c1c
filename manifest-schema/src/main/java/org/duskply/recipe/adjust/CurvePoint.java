package org.duskply.recipe.adjust;

/**
 * A point of a curve.
 *
 * @param x value going in, 0 to 1 on the curve's axis
 * @param y value coming out, on the same axis
 */
public record CurvePoint(double x, double y) {}
