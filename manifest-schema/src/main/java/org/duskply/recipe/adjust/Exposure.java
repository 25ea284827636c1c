package org.duskply.recipe.adjust;

/**
 * More or less light: {@code x·2^stops}.
 *
 * @param stops plus brightens
 */
public record Exposure(double stops) implements Adjustment {}
