package org.duskply.recipe;

import org.duskply.recipe.shape.Keyed;

/** What becomes of the transparency in a frame's file. */
public enum Coverage implements Keyed {
  /** It is multiplied into the mask of each step that uses the frame. */
  USE("use"),
  /** The frame counts as opaque. */
  IGNORE("ignore");

  private final String key;

  Coverage(String key) {
    this.key = key;
  }

  /** The word as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
