package org.duskply.engine.frame;

import java.util.Arrays;

/**
 * Runs of bytes (TIFF 6.0, section 9, PackBits): a count n from 0 to 127 stands before n + 1 bytes
 * as they are, one from −127 to −1 before a byte that is repeated 1 − n times; −128 says nothing.
 * Runs may pass the ends of rows; what does not fit what is asked for waits.
 */
final class PackBitsUnpacker implements Unpacker {
  private final PackedInput in;
  private int inAt;
  private int inEnd;
  private int left;
  private boolean repeats;
  private byte repeated;

  PackBitsUnpacker(ByteSource file) {
    this.in = new PackedInput(file);
  }

  @Override
  public void start(long offset, long length) {
    in.start(offset, length);
    inAt = 0;
    inEnd = 0;
    left = 0;
  }

  @Override
  public int read(byte[] into, int from, int to) {
    int at = from;
    while (at < to) {
      if (left == 0 && !begin()) {
        break;
      }
      int some = Math.min(left, to - at);
      if (repeats) {
        Arrays.fill(into, at, at + some, repeated);
      } else {
        if (!fill()) {
          break;
        }
        some = Math.min(some, inEnd - inAt);
        System.arraycopy(in.buffer(), inAt, into, at, some);
        inAt += some;
      }
      at += some;
      left -= some;
    }
    return at - from;
  }

  /** Begins the next run; false where the bytes run out. */
  private boolean begin() {
    while (fill()) {
      int count = in.buffer()[inAt++];
      if (count >= 0) {
        left = count + 1;
        repeats = false;
        return true;
      }
      if (count > Byte.MIN_VALUE) {
        if (!fill()) {
          return false;
        }
        left = 1 - count;
        repeats = true;
        repeated = in.buffer()[inAt++];
        return true;
      }
    }
    return false;
  }

  /** Has a byte in hand; false at the end. */
  private boolean fill() {
    if (inAt == inEnd) {
      inEnd = in.next();
      inAt = 0;
    }
    return inEnd > 0;
  }
}
