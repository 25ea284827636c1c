package org.duskply.recipe;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What came of reading a recipe.
 *
 * @param recipe the recipe; null when there are problems beyond notices
 * @param problems problems and notices in the order of the text
 */
public record Reading(@Nullable Recipe recipe, List<Problem> problems) {
  /** Copies the list. */
  public Reading {
    problems = List.copyOf(problems);
  }

  /** The notices alone. */
  public List<Problem> notices() {
    return problems.stream().filter(Problem::isNotice).toList();
  }

  /**
   * The recipe.
   *
   * @throws RecipeException with all problems when there are any beyond notices
   */
  public Recipe orThrow() {
    if (recipe == null) {
      throw new RecipeException(problems);
    }
    return recipe;
  }
}
