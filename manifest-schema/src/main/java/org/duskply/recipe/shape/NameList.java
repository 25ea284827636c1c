package org.duskply.recipe.shape;

/** The separate lists in which a recipe keeps its names. */
public enum NameList {
  FRAMES("frames", "frame"),
  MASKS("masks", "mask"),
  STEPS("steps", "step"),
  DELIVERABLES("deliverables", "deliverable");

  private final String key;
  private final String noun;

  NameList(String key, String noun) {
    this.key = key;
    this.noun = noun;
  }

  /** The recipe's key that holds the list. */
  public String key() {
    return key;
  }

  /** What one of its members is called. */
  public String noun() {
    return noun;
  }
}
