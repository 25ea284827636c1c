package org.duskply.engine.frame;

/** A file whose bytes are stored with their lowest bit first (TIFF 6.0, tag 266, FillOrder 2). */
record MirroredBytes(ByteSource file) implements ByteSource {
  @Override
  public long size() {
    return file.size();
  }

  @Override
  public void read(long at, byte[] into, int from, int count) {
    file.read(at, into, from, count);
    for (int i = from; i < from + count; i++) {
      into[i] = (byte) (Integer.reverse(into[i]) >>> 24);
    }
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
