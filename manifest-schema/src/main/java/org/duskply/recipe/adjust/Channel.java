package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Keyed;

/** What an adjustment acts on. */
public enum Channel implements Keyed {
  RGB("rgb"),
  LUMINANCE("luminance"),
  RED("red"),
  GREEN("green"),
  BLUE("blue");

  private final String key;

  Channel(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
