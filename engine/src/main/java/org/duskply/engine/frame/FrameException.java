package org.duskply.engine.frame;

import org.duskply.engine.DuskplyException;

/**
 * A frame that cannot be read. The message is one sentence for a photographer that names the file.
 */
public final class FrameException extends DuskplyException {
  private static final long serialVersionUID = 1;

  public FrameException(String sentence) {
    super(sentence);
  }

  public FrameException(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
