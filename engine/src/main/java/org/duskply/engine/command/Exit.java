package org.duskply.engine.command;

/** What the program's exit status means. */
final class Exit {
  /** All went well. */
  static final int DONE = 0;

  /** The recipe or its frames have problems, a damaged frame among them; all found were named. */
  static final int PROBLEMS = 1;

  /** The command was not written rightly, or names a step or deliverable that is not there. */
  static final int USAGE = 2;

  /** The picture could not be made or written: memory, a full disk, a folder that is closed. */
  static final int FAILED = 3;

  /** Something that should not happen; {@code --trace} shows where. */
  static final int DEFECT = 70;

  /**
   * It was given up from outside (128 + 2, the number of the interrupt signal, as shells have it).
   */
  static final int CANCELLED = 130;

  private Exit() {}
}
