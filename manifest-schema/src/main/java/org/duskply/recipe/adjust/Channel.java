package org.duskply.recipe.adjust;

/** What an adjustment acts on. */
public enum Channel {
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
  public String key() {
    return key;
  }
}
