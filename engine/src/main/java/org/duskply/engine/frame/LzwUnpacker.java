package org.duskply.engine.frame;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * LZW as TIFF 6.0, section 13 has it: codes of 9 to 12 bits, highest bit first, widened one code
 * early. The state between two reads is kept, so that a strip can be unpacked row by row.
 *
 * <p>A code stands for a string of at most 4096 bytes. It is kept as its last one to eight bytes in
 * one number, and the code of what stands before them, whose length is a multiple of eight: nearly
 * every string of a photograph is written by one store. The store may spill up to seven bytes over
 * the string's end, onto what the next string is written over; where there is no room for that, the
 * string is copied byte by byte, and what does not fit what is asked for waits.
 */
final class LzwUnpacker implements Unpacker {
  private static final int CLEAR = 256;
  private static final int END = 257;
  private static final int FIRST_FREE = 258;
  private static final int LEAST_WIDTH = 9;
  private static final int MOST_WIDTH = 12;
  private static final int CODES = 1 << MOST_WIDTH;
  private static final int NO_CODE = -1;

  /** Bytes that one number holds. */
  private static final int GROUP = Long.BYTES;

  /** In {@link #strings}, the low bits that hold the length. */
  private static final int LENGTH_BITS = 16;

  private static final int LENGTH = (1 << LENGTH_BITS) - 1;

  /** Bits that are fetched at once; with those of an unfinished code they fit into a long. */
  private static final int FETCHED = 48;

  private static final VarHandle LOWEST_FIRST =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle HIGHEST_FIRST =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  /** What the tables hold. */
  static final int TABLE_BYTES = CODES * (Integer.BYTES + GROUP + Short.BYTES + 1);

  private final PackedInput in;
  // Of each code: its string's length and, above it, first byte; both 0 where it has none.
  private final int[] strings = new int[CODES];
  // The last bytes of the string, the earliest lowest.
  private final long[] groups = new long[CODES];
  // The code of the string without them.
  private final short[] before = new short[CODES];
  private final byte[] waiting = new byte[CODES];

  private int waitingFrom;
  private int waitingTo;
  private int inAt;
  private int inEnd;
  private long bits;
  private int bitCount;
  private int width;
  private int free;
  private int previous;
  private boolean ended;

  LzwUnpacker(ByteSource file) {
    this.in = new PackedInput(file);
    for (int c = 0; c < CLEAR; c++) {
      groups[c] = c;
      strings[c] = c << LENGTH_BITS | 1;
    }
  }

  @Override
  public void start(long offset, long length) {
    in.start(offset, length);
    inAt = 0;
    inEnd = 0;
    bits = 0;
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
      at = readPlain(into, at, to);
      at = at < to ? readOne(into, at, to) : at;
    }
    return at - from;
  }

  /**
   * Reads codes as long as they are known strings that fit, and their bits are in hand. Long,
   * because all that changes from code to code is kept in locals: in fields it would be stored and
   * fetched again for each.
   */
  private int readPlain(byte[] into, int from, int to) {
    if (previous == NO_CODE) {
      return from;
    }
    byte[] packed = in.buffer();
    long bits = this.bits;
    int bitCount = this.bitCount;
    int inAt = this.inAt;
    int width = this.width;
    int free = this.free;
    int previous = this.previous;
    int at = from;
    while (true) {
      if (bitCount < width) {
        if (inEnd - inAt < Long.BYTES) {
          break;
        }
        bits = bits << FETCHED | (long) HIGHEST_FIRST.get(packed, inAt) >>> Long.SIZE - FETCHED;
        bitCount += FETCHED;
        inAt += FETCHED / Byte.SIZE;
      }
      int code = (int) (bits >>> bitCount - width) & (1 << width) - 1;
      // The code that is about to be given out is the string before with its first byte once more.
      int known = strings[code == free ? previous : code];
      int count = (known & LENGTH) + (code == free ? 1 : 0);
      if (code > free || count == 0 || count + GROUP > to - at) {
        break;
      }
      bitCount -= width;
      if (free < CODES) {
        add(free++, previous, known >>> LENGTH_BITS);
        width += widens(free, width) ? 1 : 0;
      }
      spill(code, count, into, at);
      at += count;
      previous = code;
    }
    this.bits = bits;
    this.bitCount = bitCount;
    this.inAt = inAt;
    this.width = width;
    this.free = free;
    this.previous = previous;
    return at;
  }

  /** Reads any code. */
  private int readOne(byte[] into, int from, int to) {
    int code = nextCode();
    if (code == CLEAR) {
      clear();
      return from;
    }
    if (code == END || !learn(code)) {
      ended = true;
      return from;
    }
    previous = code;
    waitingFrom = 0;
    waitingTo = strings[code] & LENGTH;
    spell(code, waitingTo, waiting);
    return from + handOverWaiting(into, from, to);
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
      bits = bits << Byte.SIZE | in.buffer()[inAt++] & 0xff;
      bitCount += Byte.SIZE;
    }
    bitCount -= width;
    return (int) (bits >>> bitCount) & (1 << width) - 1;
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
      add(free, previous, strings[code == free ? previous : code] >>> LENGTH_BITS);
      free++;
      width += widens(free, width) ? 1 : 0;
    }
    return true;
  }

  /** Lets a code stand for the string of another and one byte more. */
  private void add(int code, int shorter, int last) {
    int known = strings[shorter];
    int inGroup = known % GROUP;
    strings[code] = known + 1;
    groups[code] = (inGroup == 0 ? 0 : groups[shorter]) | (long) last << Byte.SIZE * inGroup;
    before[code] = inGroup == 0 ? (short) shorter : before[shorter];
  }

  private static boolean widens(int free, int width) {
    return free == (1 << width) - 1 && width < MOST_WIDTH;
  }

  /** Writes the string of a code, and some bytes behind it. */
  private void spill(int code, int count, byte[] into, int at) {
    int start = at + (count - 1) / GROUP * GROUP;
    LOWEST_FIRST.set(into, start, groups[code]);
    for (int c = code; start > at; ) {
      c = before[c];
      start -= GROUP;
      LOWEST_FIRST.set(into, start, groups[c]);
    }
  }

  /** Writes the string of a code, and nothing behind it. */
  private void spell(int code, int count, byte[] into) {
    int c = code;
    int start = (count - 1) / GROUP * GROUP;
    for (int at = count - 1; at >= 0; at--) {
      if (at < start) {
        c = before[c];
        start -= GROUP;
      }
      into[at] = (byte) (groups[c] >>> Byte.SIZE * (at - start));
    }
  }

  private int handOverWaiting(byte[] into, int at, int to) {
    int count = Math.min(waitingTo - waitingFrom, to - at);
    System.arraycopy(waiting, waitingFrom, into, at, count);
    waitingFrom += count;
    return count;
  }
}
