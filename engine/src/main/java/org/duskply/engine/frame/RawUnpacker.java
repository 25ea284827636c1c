package org.duskply.engine.frame;

/** Bytes that are stored as they are. */
final class RawUnpacker implements Unpacker {
  private final ByteSource file;
  private long at;
  private long end;

  RawUnpacker(ByteSource file) {
    this.file = file;
  }

  @Override
  public void start(long offset, long length) {
    at = offset;
    end = offset + length;
  }

  @Override
  public int read(byte[] into, int from, int to) {
    int count = (int) Math.min(to - from, end - at);
    if (count > 0) {
      file.read(at, into, from, count);
    }
    at += count;
    return count;
  }

  @Override
  public void skip(long count, byte[] passed) {
    at = Math.min(end, at + count);
  }
}
