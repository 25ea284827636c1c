package org.duskply.recipe.deliver;

/** How the strips of a TIFF are packed. */
public enum Compress {
  DEFLATE("deflate"),
  NONE("none");

  private final String key;

  Compress(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  public String key() {
    return key;
  }
}
