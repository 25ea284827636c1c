package org.duskply.recipe.mask;

/** What is wrong with path data: one sentence, and the character where reading stopped. */
public final class PathSyntaxException extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final int index;

  PathSyntaxException(int index, String sentence) {
    super(sentence);
    this.index = index;
  }

  /**
   * The index of the character at which reading stopped, from 0; the length of the data where it
   * ended too soon.
   */
  public int index() {
    return index;
  }
}
