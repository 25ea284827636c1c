package org.duskply.engine.frame;

/** A block of metadata that has been lifted out of a file. */
final class MemoryBytes implements ByteSource {
  private final byte[] bytes;
  private final int from;
  private final ByteSource file;

  /** The bytes of {@code bytes} from {@code from} on; failures name {@code file}. */
  MemoryBytes(byte[] bytes, int from, ByteSource file) {
    this.bytes = bytes;
    this.from = from;
    this.file = file;
  }

  @Override
  public long size() {
    return (long) bytes.length - from;
  }

  @Override
  public void read(long at, byte[] into, int to, int count) {
    if (at < 0 || at > size() - count) {
      throw fail("has a block of metadata that is cut short");
    }
    System.arraycopy(bytes, from + (int) at, into, to, count);
  }

  @Override
  public FrameException fail(String predicate) {
    return file.fail(predicate);
  }

  @Override
  public FrameException fail(String predicate, Throwable cause) {
    return file.fail(predicate, cause);
  }
}
