package org.duskply.engine.frame;

/**
 * A frame that cannot be read. The message is one sentence for a photographer that names the file.
 */
public final class FrameException extends RuntimeException {
  private static final long serialVersionUID = 1;

  public FrameException(String sentence) {
    super(sentence);
  }

  public FrameException(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
