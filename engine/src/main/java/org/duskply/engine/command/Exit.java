package org.duskply.engine.command;

/** What the program's exit status means. */
final class Exit {
  /** All went well. */
  static final int DONE = 0;

  /** The recipe or its frames have problems; all of them were named. */
  static final int PROBLEMS = 1;

  /** The command was not written rightly. */
  static final int USAGE = 2;

  /** The picture could not be made or written: memory, a damaged frame, a full disk. */
  static final int FAILED = 3;

  /** Something that should not happen; {@code --trace} shows where. */
  static final int DEFECT = 70;

  /** It was given up from outside (as shells have it: 128 + the number of the interrupt signal). */
  static final int CANCELLED = 130;

  private Exit() {}
}
