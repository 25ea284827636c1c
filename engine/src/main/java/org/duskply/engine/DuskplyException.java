package org.duskply.engine;

/**
 * What the engine throws when a picture cannot be made. The message is a sentence, or several, for
 * the person at the desk.
 */
public class DuskplyException extends RuntimeException {
  private static final long serialVersionUID = 1;

  public DuskplyException(String sentence) {
    super(sentence);
  }

  public DuskplyException(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
