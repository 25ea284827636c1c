package org.duskply.engine.deliver;

import org.duskply.engine.DuskplyException;

/**
 * A file that cannot be delivered. The message is one sentence for a photographer that names the
 * file.
 */
public final class DeliverException extends DuskplyException {
  private static final long serialVersionUID = 1;

  public DeliverException(String sentence) {
    super(sentence);
  }

  public DeliverException(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
