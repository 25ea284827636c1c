package org.duskply.engine.deliver;

import java.util.Arrays;
import java.util.zip.Deflater;

/** Bytes that grow at their end. */
final class Growing {
  private byte[] bytes;
  private int count;

  Growing(int room) {
    bytes = new byte[room];
  }

  int count() {
    return count;
  }

  void add(byte[] from, int at, int length) {
    room(length);
    System.arraycopy(from, at, bytes, count, length);
    count += length;
  }

  void add(int b) {
    room(1);
    bytes[count++] = (byte) b;
  }

  /** Has a deflater take all its input and end on a whole byte. */
  void flush(Deflater deflater) {
    do { // a new strategy takes a call of its own, which flushes nothing
      deflate(deflater, Deflater.NO_FLUSH);
    } while (!deflater.needsInput());
    do {
      deflate(deflater, Deflater.SYNC_FLUSH);
    } while (count == bytes.length); // one that leaves room is done
  }

  /** Has a deflater take all its input and end its stream. */
  void finish(Deflater deflater) {
    deflater.finish();
    do {
      deflate(deflater, Deflater.NO_FLUSH);
    } while (!deflater.finished());
  }

  private void deflate(Deflater deflater, int flush) {
    room(64);
    count += deflater.deflate(bytes, count, bytes.length - count, flush);
  }

  byte[] toBytes() {
    return Arrays.copyOf(bytes, count);
  }

  private void room(int more) {
    if (bytes.length - count < more) {
      bytes = Arrays.copyOf(bytes, Math.addExact(bytes.length, Math.max(more, bytes.length / 2)));
    }
  }
}
