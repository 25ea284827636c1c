package org.duskply.engine.colour;

/**
 * An ICC profile that is not used. The message is one sentence for a photographer that begins with
 * "The colour profile"; whoever read the file adds its name.
 */
public final class IccException extends RuntimeException {
  private static final long serialVersionUID = 1;

  /** Why a profile is not used. */
  public enum Reason {
    /** The bytes are something else. */
    NOT_A_PROFILE,
    /** There are fewer bytes than the profile says it has. */
    CUT_SHORT,
    /** It is longer, or holds more, than the named limits allow. */
    TOO_LARGE,
    /** What it holds contradicts itself or ICC.1. */
    DAMAGED,
    /** Sound, but of a version or a kind other than that of a picture's RGB or grey. */
    OTHER_KIND
  }

  private final Reason reason;

  /**
   * @param sentence one sentence without line breaks or text from the file
   */
  public IccException(Reason reason, String sentence) {
    super(sentence);
    this.reason = reason;
  }

  /** Why the profile is not used. */
  public Reason reason() {
    return reason;
  }
}
