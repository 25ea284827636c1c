package org.duskply.recipe.step;

import org.duskply.recipe.shape.Keyed;

/** By what a pop finds the brighter of two pictures. */
public enum Compare implements Keyed {
  CHANNELS("channels"),
  LUMINANCE("luminance");

  private final String key;

  Compare(String key) {
    this.key = key;
  }

  /** The word as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
