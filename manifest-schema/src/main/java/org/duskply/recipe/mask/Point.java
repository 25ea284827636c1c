package org.duskply.recipe.mask;

/**
 * A position on the grid: pixels, x right, y down, origin at the outer corner of the top-left
 * pixel.
 *
 * @param x across
 * @param y down
 */
public record Point(double x, double y) {}
