package org.duskply.recipe.deliver;

import org.duskply.recipe.shape.Keyed;

/** How the strips of a TIFF are packed. */
public enum Compress implements Keyed {
  DEFLATE("deflate"),
  LZW("lzw"),
  NONE("none");

  private final String key;

  Compress(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
