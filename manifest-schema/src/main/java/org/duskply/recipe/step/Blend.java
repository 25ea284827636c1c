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
  OVERLAY("overlay"),
  DARKEN("darken"),
  LIGHTEN("lighten"),
  COLOR_DODGE("color-dodge"),
  COLOR_BURN("color-burn"),
  HARD_LIGHT("hard-light"),
  SOFT_LIGHT("soft-light"),
  DIFFERENCE("difference"),
  EXCLUSION("exclusion"),
  HUE("hue"),
  SATURATION("saturation"),
  COLOR("color"),
  LUMINOSITY("luminosity"),
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

  /**
   * Whether it only chooses between the two, channel by channel and by which is greater: then it is
   * the same before and after any rising curve, and so in linear light and in encoded values.
   */
  public boolean choosesOnly() {
    return this == NORMAL || this == DARKEN || this == LIGHTEN;
  }
}
