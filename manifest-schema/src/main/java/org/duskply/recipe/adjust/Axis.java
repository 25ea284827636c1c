package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Keyed;

/**
 * Where an adjustment's numbers are read: on the encoded 0 to 1 axis of the screen, or in linear
 * light.
 */
public enum Axis implements Keyed {
  ENCODED("encoded"),
  LINEAR("linear");

  private final String key;

  Axis(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
