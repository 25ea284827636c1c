package org.duskply.recipe.adjust;

/**
 * A power of the encoded value, odd below 0: below 1 lifts the middle, above 1 lowers it.
 *
 * @param power above 0
 */
public record Power(double power) implements Adjustment {}
