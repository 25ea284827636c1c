package org.duskply.recipe.step;

import org.duskply.recipe.shape.Keyed;

/**
 * Blend modes by their W3C Compositing and Blending names, and {@code plus-lighter} without its
 * clamp.
 */
public enum Blend implements Keyed {
  NORMAL("normal"),
  MULTIPLY("multiply"),
  SCREEN("screen"),
  DARKEN("darken"),
  LIGHTEN("lighten"),
  PLUS_LIGHTER("plus-lighter");

  private final String key;

  Blend(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
