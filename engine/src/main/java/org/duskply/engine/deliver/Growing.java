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

  /**
   * Adds all that a deflater gives for the input it has. A call that leaves room has taken all the
   * input and finished its flush.
   *
   * @param flush {@link Deflater#NO_FLUSH}, or {@link Deflater#SYNC_FLUSH} to end on a whole byte
   */
  void deflate(Deflater deflater, int flush) {
    do {
      room(64);
      count += deflater.deflate(bytes, count, bytes.length - count, flush);
    } while (count == bytes.length);
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
