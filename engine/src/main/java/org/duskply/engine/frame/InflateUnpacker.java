package org.duskply.engine.frame;

import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Deflated bytes in the zlib form (RFC 1950, 1951). However much a run could unpack to, no more
 * than is asked for is ever made.
 */
final class InflateUnpacker implements Unpacker {
  /** What the native inflater holds: its 32 KB window and its tables, rounded up. */
  static final int NATIVE_BYTES = 64 << 10;

  private final PackedInput in;
  private final Inflater inflater = new Inflater();
  private final byte[] passed = new byte[4096];
  private boolean damaged;

  InflateUnpacker(ByteSource file) {
    this.in = new PackedInput(file);
  }

  @Override
  public void start(long offset, long length) {
    in.start(offset, length);
    inflater.reset();
    damaged = false;
  }

  @Override
  public int read(byte[] into, int from, int to) {
    int at = from;
    long before = inflater.getBytesWritten();
    try {
      while (at < to && !damaged) {
        int got = inflater.inflate(into, at, to - at);
        at += got;
        if (got == 0 && !feed()) {
          break;
        }
      }
    } catch (DataFormatException e) {
      damaged = true;
      at = from + (int) (inflater.getBytesWritten() - before);
    }
    return at - from;
  }

  /** Whether something was met that is no deflated data, or whose checksum does not match. */
  boolean damaged() {
    return damaged;
  }

  private boolean feed() {
    if (inflater.finished() || inflater.needsDictionary()) {
      return false;
    }
    int count = in.next();
    inflater.setInput(in.buffer(), 0, count);
    return count > 0;
  }

  @Override
  public void skip(long count) {
    for (long left = count; left > 0; ) {
      int got = read(passed, 0, (int) Math.min(passed.length, left));
      if (got == 0) {
        return;
      }
      left -= got;
    }
  }

  @Override
  public void close() {
    inflater.end();
  }
}
