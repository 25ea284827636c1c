package org.duskply.recipe.adjust;

/**
 * Contrast about a pivot in linear light.
 *
 * @param strength 0 leaves the picture, plus steepens
 * @param pivot the linear value that stays, 0.18 being a grey card
 * @param channel {@code luminance} or {@code rgb}
 */
public record Contrast(double strength, double pivot, Channel channel) implements Adjustment {}
