package org.duskply.engine;

import java.util.HashMap;
import java.util.Map;
import org.duskply.recipe.Recipe;
import org.jspecify.annotations.Nullable;

/**
 * The words of a recipe's named masks, found once. Steps tell them where they are short; a long one
 * is told once, by itself, so that ten thousand steps through one of ten thousand strokes are no
 * longer than the recipe.
 */
final class ToldMasks {
  private static final int LONG = 400;

  private final Map<String, String> words = new HashMap<>();

  private ToldMasks() {}

  static ToldMasks of(Recipe recipe) {
    ToldMasks told = new ToldMasks();
    recipe.masks().forEach((name, mask) -> told.words.put(name, MaskWords.of(mask)));
    return told;
  }

  /** What a step says of a mask; absent for one that is told by itself. */
  @Nullable String atStep(String name) {
    String all = words.get(name);
    return all == null || all.length() > LONG ? null : all;
  }

  /** All of a mask; empty where the recipe has none of that name. */
  String all(String name) {
    return words.getOrDefault(name, "");
  }
}
