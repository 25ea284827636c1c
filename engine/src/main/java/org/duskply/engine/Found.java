package org.duskply.engine;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.duskply.recipe.Place;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeException;

/**
 * Gathers what is wrong and what is worth a look, each with its place in the recipe, so that all of
 * it is told at once, and what several alternates share but once.
 */
final class Found {
  private final Recipe recipe;
  private final Set<Problem> problems = new LinkedHashSet<>();

  /**
   * Nothing found yet.
   *
   * @param before what the reader found
   */
  Found(Recipe recipe, List<Problem> before) {
    this.recipe = recipe;
    problems.addAll(before);
  }

  /** Something that stops the picture. */
  void problem(String path, String sentence) {
    add(Problem.Severity.PROBLEM, path, sentence);
  }

  /** Something worth a look. */
  void notice(String path, String sentence) {
    add(Problem.Severity.NOTICE, path, sentence);
  }

  /** Throws everything if there is a problem, else returns the notices. */
  List<Problem> noticesOrThrow() {
    if (problems.stream().anyMatch(p -> !p.isNotice())) {
      throw new RecipeException(List.copyOf(problems));
    }
    return List.copyOf(problems);
  }

  private void add(Problem.Severity severity, String path, String sentence) {
    Place place = recipe.places().at(path);
    problems.add(
        new Problem(severity, place, path, sentence, "", "", null, recipe.places().snippet(place)));
  }
}
