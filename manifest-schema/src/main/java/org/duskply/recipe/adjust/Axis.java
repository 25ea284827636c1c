package org.duskply.recipe.adjust;

/**
 * Where an adjustment's numbers are read: on the encoded 0 to 1 axis of the screen, or in linear
 * light.
 */
public enum Axis {
  ENCODED("encoded"),
  LINEAR("linear");

  private final String key;

  Axis(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  public String key() {
    return key;
  }
}
