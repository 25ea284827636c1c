package org.duskply.engine.frame;

import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Inflates by zlib, the JDK's or the system's. */
final class ZlibInflater implements DeflateUnpacker {
  /** What the native inflater holds: its 32 KB window and its tables, rounded up. */
  static final int NATIVE_BYTES = 64 << 10;

  private final PackedInput in;
  private final Inflater inflater = new Inflater();
  private boolean damaged;

  ZlibInflater(PackedInput in) {
    this.in = in;
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

  @Override
  public boolean damaged() {
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
  public void close() {
    inflater.end();
  }
}
