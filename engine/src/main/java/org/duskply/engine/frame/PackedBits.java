package org.duskply.engine.frame;

/**
 * The bits of one run of stored bytes, the lowest of each byte first (RFC 1951 section 3.1.1).
 *
 * <p>Its fields are open to a loop that keeps them in locals. Above the {@link #count} bits that
 * are in hand, {@link #bits} may hold such as come next, or none: adding them again changes
 * nothing.
 */
final class PackedBits {
  private final PackedInput in;
  final byte[] packed;
  int at;
  int end;
  long bits;
  int count;

  PackedBits(PackedInput in) {
    this.in = in;
    this.packed = in.buffer();
  }

  /** Turns to the {@code length} stored bytes that begin at {@code offset}. */
  void start(long offset, long length) {
    in.start(offset, length);
    at = 0;
    end = 0;
    bits = 0;
    count = 0;
  }

  /** Sees to it that {@code wanted} bits, at most 57, are in hand; false if there are no more. */
  boolean has(int wanted) {
    while (count < wanted) {
      if (!more()) {
        return false;
      }
      bits |= (packed[at++] & 0xFFL) << count;
      count += Byte.SIZE;
    }
    return true;
  }

  /** Takes bits, at most 31, that are in hand. */
  int take(int wanted) {
    int taken = (int) bits & ~(-1 << wanted);
    drop(wanted);
    return taken;
  }

  /** Passes over bits that are in hand. */
  void drop(int passed) {
    bits >>>= passed;
    count -= passed;
  }

  /** Goes on at the next whole byte. */
  void align() {
    drop(count % Byte.SIZE);
  }

  /** Takes whole bytes; after {@link #align}. Fewer than asked for where the run ends. */
  int bytes(byte[] into, int from, int to) {
    int done = from;
    for (; done < to && count > 0; done++) {
      into[done] = (byte) take(Byte.SIZE);
    }
    if (done == to) {
      return to - from;
    }
    bits = 0;
    while (done < to && more()) {
      int some = Math.min(to - done, end - at);
      System.arraycopy(packed, at, into, done, some);
      at += some;
      done += some;
    }
    return done - from;
  }

  private boolean more() {
    if (at == end) {
      end = in.next();
      at = 0;
    }
    return at < end;
  }
}
