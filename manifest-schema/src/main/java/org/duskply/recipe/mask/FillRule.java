package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Keyed;

/** Which side of a crossing outline is inside, as in SVG 2. */
public enum FillRule implements Keyed {
  NONZERO("nonzero"),
  EVENODD("evenodd");

  private final String key;

  FillRule(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
