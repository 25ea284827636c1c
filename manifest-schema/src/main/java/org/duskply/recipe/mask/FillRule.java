package org.duskply.recipe.mask;

/** Which side of a crossing outline is inside, as in SVG 2. */
public enum FillRule {
  NONZERO("nonzero"),
  EVENODD("evenodd");

  private final String key;

  FillRule(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  public String key() {
    return key;
  }
}
