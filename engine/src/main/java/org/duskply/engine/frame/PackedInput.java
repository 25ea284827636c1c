package org.duskply.engine.frame;

/** One run of stored bytes, handed out piece by piece in one buffer. */
final class PackedInput {
  private final ByteSource file;
  private final byte[] buffer = new byte[FrameLimits.READ_BYTES];
  private long first;
  private long at;
  private long end;
  private int held; // bytes of the run's start that are in the buffer

  PackedInput(ByteSource file) {
    this.file = file;
  }

  /**
   * Turns to a run. What the buffer holds of it, if it is the same as before, is not read again.
   */
  void start(long offset, long length) {
    held = offset == first && offset + length == end ? held : 0;
    first = offset;
    at = offset;
    end = offset + length;
  }

  /** The buffer that {@link #next} fills. */
  byte[] buffer() {
    return buffer;
  }

  /** Fills the buffer from its start; how many bytes there are, 0 at the end of the run. */
  int next() {
    int count = (int) Math.min(buffer.length, end - at);
    if (count > 0) {
      if (at > first || count != held) {
        held = 0;
        file.read(at, buffer, 0, count);
        held = at == first ? count : 0;
      }
      at += count;
    }
    return count;
  }
}
