package org.duskply.recipe.adjust;

/**
 * Distance from grey in Oklab.
 *
 * @param factor 0 is grey, 1 leaves the picture
 */
public record Saturation(double factor) implements Adjustment {}
