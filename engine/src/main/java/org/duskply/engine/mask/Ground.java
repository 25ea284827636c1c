package org.duskply.engine.mask;

import org.duskply.engine.pixel.Region;

/**
 * The grid that a recipe's shapes are drawn on, and the canvas that they fall on.
 *
 * @param width of the grid, in its own pixels
 * @param height of the grid, in its own pixels
 * @param scale pixels of the canvas for one of the grid
 * @param canvas all pixels of the picture
 */
public record Ground(double width, double height, double scale, Region canvas) {}
