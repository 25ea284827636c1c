package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Keyed;

/** How a gradient rises from 0 to 1. */
public enum Ease implements Keyed {
  /** Evenly. */
  LINEAR("linear"),
  /** Without a kink at either end: 3u² − 2u³. */
  SMOOTH("smooth");

  private final String key;

  Ease(String key) {
    this.key = key;
  }

  /** The name as a recipe writes it. */
  @Override
  public String key() {
    return key;
  }
}
