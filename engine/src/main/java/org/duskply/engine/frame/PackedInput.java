package org.duskply.engine.frame;

/** One run of stored bytes, handed out piece by piece in one buffer. */
final class PackedInput {
  private final ByteSource file;
  private final byte[] buffer = new byte[FrameLimits.READ_BYTES];
  private long at;
  private long end;

  PackedInput(ByteSource file) {
    this.file = file;
  }

  void start(long offset, long length) {
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
      file.read(at, buffer, 0, count);
      at += count;
    }
    return count;
  }
}
