package org.duskply.engine;

/**
 * A rendering that was given up because {@link Progress#cancelled} said so. No file has been
 * changed.
 */
public final class CancelledException extends DuskplyException {
  private static final long serialVersionUID = 1;

  public CancelledException() {
    super("The rendering was cancelled; no file has been changed.");
  }
}
