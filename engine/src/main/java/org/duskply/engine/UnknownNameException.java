package org.duskply.engine;

/** Someone asked for a step or a deliverable by a name that the recipe does not have. */
public final class UnknownNameException extends DuskplyException {
  private static final long serialVersionUID = 1;

  public UnknownNameException(String sentence) {
    super(sentence);
  }
}
