package org.duskply.recipe;

import org.duskply.recipe.shape.Keyed;

/** The five RGB colour spaces that a recipe can name; the names are those of CSS Color 4. */
public enum NamedSpace implements Keyed {
  SRGB("srgb"),
  DISPLAY_P3("display-p3"),
  A98_RGB("a98-rgb"),
  PROPHOTO_RGB("prophoto-rgb"),
  REC2020("rec2020");

  private final String key;

  NamedSpace(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
