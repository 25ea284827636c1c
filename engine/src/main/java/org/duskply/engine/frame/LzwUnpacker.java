package org.duskply.engine.frame;

/**
 * LZW as TIFF 6.0, section 13 has it: codes of 9 to 12 bits, highest bit first, widened one code
 * early. The state between two reads is kept, so that a strip can be unpacked row by row.
 *
 * <p>A code stands for a string of at most 4096 bytes, kept as its last byte and the code of the
 * rest, and written from its end; where it does not fit what is asked for, the rest waits.
 */
final class LzwUnpacker implements Unpacker {
  private static final int CLEAR = 256;
  private static final int END = 257;
  private static final int FIRST_FREE = 258;
  private static final int LEAST_WIDTH = 9;
  private static final int MOST_WIDTH = 12;
  private static final int CODES = 1 << MOST_WIDTH;
  private static final int NO_CODE = -1;

  /** What the tables hold. */
  static final int TABLE_BYTES = CODES * (2 + 2 + 1 + 1 + 1) + 4096;

  private final PackedInput in;
  private final short[] rest = new short[CODES];
  private final short[] length = new short[CODES];
  private final byte[] last = new byte[CODES];
  private final byte[] first = new byte[CODES];
  private final byte[] waiting = new byte[CODES];
  private final byte[] passed = new byte[4096];

  private int waitingFrom;
  private int waitingTo;
  private int inAt;
  private int inEnd;
  private int bitBuffer;
  private int bitCount;
  private int width;
  private int free;
  private int previous;
  private boolean ended;

  LzwUnpacker(ByteSource file) {
    this.in = new PackedInput(file);
    for (int c = 0; c < CLEAR; c++) {
      last[c] = (byte) c;
      first[c] = (byte) c;
      length[c] = 1;
    }
  }

  @Override
  public void start(long offset, long length) {
    in.start(offset, length);
    inAt = 0;
    inEnd = 0;
    bitBuffer = 0;
    bitCount = 0;
    waitingFrom = 0;
    waitingTo = 0;
    ended = false;
    clear();
  }

  private void clear() {
    width = LEAST_WIDTH;
    free = FIRST_FREE;
    previous = NO_CODE;
  }

  @Override
  public int read(byte[] into, int from, int to) {
    int at = from + handOverWaiting(into, from, to);
    while (at < to && !ended) {
      int code = nextCode();
      if (code == CLEAR) {
        clear();
      } else if (code == END || !learn(code)) {
        ended = true;
      } else {
        at = write(code, into, at, to);
        previous = code;
      }
    }
    return at - from;
  }

  /** The next code; {@link #END} where the bytes run out. */
  private int nextCode() {
    while (bitCount < width) {
      if (inAt == inEnd) {
        inEnd = in.next();
        inAt = 0;
        if (inEnd == 0) {
          return END;
        }
      }
      bitBuffer = (bitBuffer << 8) | (in.buffer()[inAt++] & 0xff);
      bitCount += 8;
    }
    bitCount -= width;
    return (bitBuffer >>> bitCount) & ((1 << width) - 1);
  }

  /** Adds the string that {@code code} completes to the table; false if the code is not known. */
  private boolean learn(int code) {
    if (previous == NO_CODE) {
      return code < CLEAR;
    }
    if (code > free || (code == free && free == CODES)) {
      return false;
    }
    if (free < CODES) {
      rest[free] = (short) previous;
      length[free] = (short) (length[previous] + 1);
      first[free] = first[previous];
      last[free] = code == free ? first[previous] : first[code];
      free++;
      if (free == (1 << width) - 1 && width < MOST_WIDTH) {
        width++;
      }
    }
    return true;
  }

  /** Writes the string of a code; what does not fit waits. Returns the place after it. */
  private int write(int code, byte[] into, int at, int to) {
    int count = length[code];
    if (count <= to - at) {
      spell(code, into, at + count);
      return at + count;
    }
    spell(code, waiting, count);
    waitingFrom = 0;
    waitingTo = count;
    return at + handOverWaiting(into, at, to);
  }

  private void spell(int code, byte[] into, int end) {
    int c = code;
    int at = end;
    for (int n = length[code]; n > 0; n--) {
      into[--at] = last[c];
      c = rest[c];
    }
  }

  private int handOverWaiting(byte[] into, int at, int to) {
    int count = Math.min(waitingTo - waitingFrom, to - at);
    System.arraycopy(waiting, waitingFrom, into, at, count);
    waitingFrom += count;
    return count;
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
  public void close() {}
}
