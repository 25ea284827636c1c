package org.duskply.engine.svg;

import org.duskply.engine.DuskplyException;

/** Why outlines cannot be had from a drawing, in one sentence that names its file. */
public final class DrawingException extends DuskplyException {
  private static final long serialVersionUID = 1;

  DrawingException(String sentence) {
    super(sentence);
  }
}
