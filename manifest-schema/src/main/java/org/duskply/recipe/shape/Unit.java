package org.duskply.recipe.shape;

/** What a number counts. */
public enum Unit {
  /** A plain number. */
  NONE(""),
  /** Doublings of light. */
  STOPS("stops"),
  /** Pixels of the grid. */
  PIXELS("px"),
  /** Bits a sample. */
  BITS("bits"),
  /** The colour of a light, by its temperature. */
  KELVIN("kelvin"),
  /** Shifts of a light's colour: millionths of 1/kelvin. */
  MIRED("mired"),
  /** Parts of a turn, 360 to the whole. */
  DEGREES("degrees");

  private final String symbol;

  Unit(String symbol) {
    this.symbol = symbol;
  }

  /** What is written after the number; empty for a plain number. */
  public String symbol() {
    return symbol;
  }
}
