package org.duskply.engine.frame;

import javax.imageio.stream.ImageInputStreamImpl;

/** A frame's file as image readers want it: with a place, and read through one small buffer. */
final class FileImageInput extends ImageInputStreamImpl {
  private final ByteSource file;
  private final byte[] buffer = new byte[FrameLimits.READ_BYTES];
  private long bufferAt;
  private int bufferCount;

  FileImageInput(ByteSource file) {
    this.file = file;
  }

  @Override
  public int read() {
    bitOffset = 0;
    if (!fill()) {
      return -1;
    }
    return buffer[(int) (streamPos++ - bufferAt)] & 0xff;
  }

  @Override
  public int read(byte[] into, int from, int count) {
    bitOffset = 0;
    if (count == 0) {
      return 0;
    }
    if (!fill()) {
      return -1;
    }
    int skip = (int) (streamPos - bufferAt);
    int some = Math.min(count, bufferCount - skip);
    System.arraycopy(buffer, skip, into, from, some);
    streamPos += some;
    return some;
  }

  /** Has the byte at the current place in the buffer; false at the file's end. */
  private boolean fill() {
    if (streamPos >= bufferAt && streamPos < bufferAt + bufferCount) {
      return true;
    }
    if (streamPos >= file.size()) {
      return false;
    }
    bufferCount = (int) Math.min(buffer.length, file.size() - streamPos);
    bufferAt = streamPos;
    file.read(bufferAt, buffer, 0, bufferCount);
    return true;
  }

  @Override
  public long length() {
    return file.size();
  }
}
