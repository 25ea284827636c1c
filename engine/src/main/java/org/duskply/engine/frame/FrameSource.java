package org.duskply.engine.frame;

import org.duskply.engine.pixel.Region;

/**
 * A frame's file, opened far enough to know what it holds. Pixels come in units (strips, rows of
 * tiles, groups of rows), numbered from the top of the upright picture; every unit spans the full
 * width. Immutable and thread-safe.
 */
public interface FrameSource {
  /** What the file's header says. */
  FrameInfo info();

  /** How units can be reached. */
  Access access();

  /** Which reader takes this file, and why this one: a sentence for people. */
  String reason();

  /** How many units. */
  int units();

  /** The pixels of unit {@code index}, full width. */
  Region unit(int index);

  /**
   * The pixels that a {@link FrameReader} returns when it is asked for a part of a unit: those, and
   * what it cannot leave out.
   */
  default Region returned(int index, Region part) {
    return unit(index);
  }

  /**
   * Most bytes that a {@link FrameReader} holds beside the samples it returns, while one unit is
   * read.
   */
  long workingBytes();

  /** Most bytes that a {@link FrameReader} keeps between units. */
  long cursorBytes();

  /** A reader with its own place in the file. */
  FrameReader reader();

  /** A reader that will be asked for nothing outside {@code part}. */
  default FrameReader reader(Region part) {
    return reader();
  }

  /** As {@link #workingBytes()}, of a reader for {@code part} alone. */
  default long workingBytes(Region part) {
    return workingBytes();
  }

  /** As {@link #cursorBytes()}, of a reader for {@code part} alone. */
  default long cursorBytes(Region part) {
    return cursorBytes();
  }

  /** How units can be reached. */
  enum Access {
    /** Any unit at any time, several at once. */
    RANDOM,
    /** From the top down, one after the other; going back starts again from the top. */
    FORWARD
  }
}
