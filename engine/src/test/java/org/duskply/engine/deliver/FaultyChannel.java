package org.duskply.engine.deliver;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A channel that fails once so many bytes have been written, in the middle of a write if need be.
 */
final class FaultyChannel implements SeekableByteChannel {
  private final SeekableByteChannel inner;
  private final IOException fault;
  private long left;

  private FaultyChannel(SeekableByteChannel inner, long bytes, IOException fault) {
    this.inner = inner;
    this.left = bytes;
    this.fault = fault;
  }

  /** Opens files that fail after {@code bytes}. */
  static SafeFile.Opener after(long bytes, IOException fault) {
    return part -> new FaultyChannel(plain(part), bytes, fault);
  }

  static SeekableByteChannel plain(Path part) throws IOException {
    return Files.newByteChannel(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
  }

  @Override
  public int write(ByteBuffer src) throws IOException {
    if (left == 0) {
      throw fault;
    }
    int limit = src.limit();
    src.limit(src.position() + (int) Math.min(src.remaining(), left));
    int count = inner.write(src);
    src.limit(limit);
    left -= count;
    return count;
  }

  @Override
  public int read(ByteBuffer dst) throws IOException {
    return inner.read(dst);
  }

  @Override
  public long position() throws IOException {
    return inner.position();
  }

  @Override
  public SeekableByteChannel position(long newPosition) throws IOException {
    inner.position(newPosition);
    return this;
  }

  @Override
  public long size() throws IOException {
    return inner.size();
  }

  @Override
  public SeekableByteChannel truncate(long size) throws IOException {
    inner.truncate(size);
    return this;
  }

  @Override
  public boolean isOpen() {
    return inner.isOpen();
  }

  @Override
  public void close() throws IOException {
    inner.close();
  }
}
