package org.duskply.recipe;

import org.duskply.recipe.shape.Keyed;

/** How the difference in exposure of two frames is found. */
public enum MatchBy implements Keyed {
  /** From time, aperture and sensitivity as the two files state them. */
  EXIF("exif");

  private final String key;

  MatchBy(String key) {
    this.key = key;
  }

  /** The word as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
