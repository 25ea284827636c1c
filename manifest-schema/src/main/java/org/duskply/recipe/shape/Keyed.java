package org.duskply.recipe.shape;

/** A constant that a recipe writes as a word. */
public interface Keyed {
  /** The word as a recipe writes it. */
  String key();
}
