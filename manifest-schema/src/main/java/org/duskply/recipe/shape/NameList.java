package org.duskply.recipe.shape;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The separate lists in which a recipe keeps its names. */
public enum NameList {
  FRAMES("frames", "frame"),
  MASKS("masks", "mask"),
  STEPS("steps", "step"),
  DELIVERABLES("deliverables", "deliverable"),
  ALTERNATES("alternates", "alternate");

  /** In place of an alternate's name: the recipe as it stands. */
  public static final String MAIN = "main";

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

  /** What a use may say besides the names that the list gives. */
  public List<String> always() {
    return this == ALTERNATES ? List.of(MAIN) : List.of();
  }

  /** What keeps {@code text} from being the use of a name in this list; null when nothing does. */
  public @Nullable String fault(String text) {
    return this == STEPS
        ? Names.stepFault(text)
        : always().contains(text) ? null : Names.fault(text);
  }
}
