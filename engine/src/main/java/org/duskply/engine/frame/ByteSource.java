package org.duskply.engine.frame;

/** Bytes that can be read at any place: a file, or a block of metadata inside one. */
interface ByteSource {
  /** How many bytes there are. */
  long size();

  /**
   * Reads exactly {@code count} bytes from place {@code at}. Any number of threads may do so.
   *
   * @throws FrameException if they are not all there
   */
  void read(long at, byte[] into, int from, int count);

  /** A failure of this file: its name, {@code predicate} and a full stop make the sentence. */
  FrameException fail(String predicate);

  /** As {@link #fail(String)}, with what lies behind it for a developer's eyes. */
  FrameException fail(String predicate, Throwable cause);

  /** The first {@code most} bytes, fewer if there are fewer. */
  default byte[] head(int most) {
    byte[] head = new byte[(int) Math.min(most, size())];
    read(0, head, 0, head.length);
    return head;
  }
}
