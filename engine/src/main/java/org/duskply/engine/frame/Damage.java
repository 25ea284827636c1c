package org.duskply.engine.frame;

import java.util.BitSet;
import java.util.List;

/**
 * What becomes of damage: the first of it ends a strict reading; a tolerant one goes on with grey
 * in place of what is missing, and tells which rows. Thread-safe.
 */
final class Damage {
  private final boolean tolerated;
  private final BitSet rows = new BitSet();

  Damage(boolean tolerated) {
    this.tolerated = tolerated;
  }

  /** Whether a reading goes on. */
  boolean tolerated() {
    return tolerated;
  }

  /**
   * Some rows are damaged.
   *
   * @throws FrameException {@code failure}, if damage is not tolerated
   */
  synchronized void rows(int from, int to, FrameException failure) {
    if (!tolerated) {
      throw failure;
    }
    rows.set(from, Math.max(to, from + 1));
  }

  /** A sentence on the damaged rows, if there are any. */
  synchronized List<String> notices() {
    return rows.isEmpty() ? List.of() : List.of(sentence(rows.nextSetBit(0), rows.length() - 1));
  }

  /** The sentence of a tolerant reading, for the rows from {@code first} to {@code last}. */
  static String sentence(int first, int last) {
    return "Between its rows "
        + first
        + " and "
        + last
        + " some are missing or damaged; they are left grey, or as they could be decoded.";
  }
}
