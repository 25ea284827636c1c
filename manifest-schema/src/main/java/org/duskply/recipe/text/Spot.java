package org.duskply.recipe.text;

/**
 * A line and a column, both from 1.
 *
 * @param line counted from 1
 * @param column in characters, counted from 1
 */
public record Spot(int line, int column) {
  /** Where a text begins. */
  public static final Spot START = new Spot(1, 1);
}
