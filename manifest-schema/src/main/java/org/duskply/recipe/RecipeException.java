package org.duskply.recipe;

import java.util.List;
import java.util.stream.Collectors;

/** A recipe that cannot be used; it carries everything that is wrong with it. */
public final class RecipeException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  /**
   * Carries the problems.
   *
   * @param problems at least one; notices may be among them
   */
  public RecipeException(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** All that was found, in the order of the text. */
  public List<Problem> problems() {
    return problems;
  }
}
