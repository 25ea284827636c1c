package org.duskply.recipe;

import org.duskply.recipe.shape.Keyed;

/** What the numbers in a frame's file are, whatever the file says. */
public enum ReadsAs implements Keyed {
  /** Proportional to light. */
  LINEAR("linear"),
  /** Encoded for the screen by the curve of the frame's colour space. */
  ENCODED("encoded");

  private final String key;

  ReadsAs(String key) {
    this.key = key;
  }

  /** The word as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
