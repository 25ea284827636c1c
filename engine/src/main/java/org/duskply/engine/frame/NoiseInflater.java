package org.duskply.engine.frame;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.zip.Adler32;

/**
 * Our own inflater, for bytes among which little repeats. The state between two reads is kept, so
 * that a strip can be unpacked some rows at a time.
 *
 * <p>In the noise of 16-bit samples nearly all bytes are literals, whose words are long for one
 * byte of a sample and short for the other. One look-up tells two of them, which makes it nearly
 * twice as fast as zlib. Where a fourth of all symbols repeat something, it is no faster.
 */
final class NoiseInflater implements DeflateUnpacker {
  /** How far back a byte may be that is repeated. */
  private static final int WINDOW = 1 << 15;

  private static final int HEADER_BITS = 16;
  private static final int METHOD_DEFLATE = 8;
  private static final int MOST_WINDOW_SIZE = 7; // 32 KiB
  private static final int WITH_DICTIONARY = 1 << 5;
  private static final int STORED = 0;
  private static final int FIXED = 1;
  private static final int OWN_CODES = 2;

  /** Bytes that a pass of the quick loop reads at most, and writes but for what it repeats. */
  private static final int STEP_READS = 2 * Long.BYTES;

  private static final int STEP_WRITES = 4 * Short.BYTES;

  /** Bits that are in hand at least after a refill. */
  private static final int REFILLED = 56;

  /** Of a length, a distance, and what is added to each. */
  private static final int MOST_SYMBOL_BITS = PrefixTable.LONGEST + 5 + PrefixTable.LONGEST + 13;

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle SHORTS =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

  /** What it holds beside its input. */
  static final int BYTES = WINDOW + BlockCodes.BYTES;

  /** Where in a run it is. */
  private enum At {
    START,
    BLOCK_HEAD,
    STORED_BLOCK,
    CODED_BLOCK,
    TRAILER,
    END
  }

  private final PackedBits in;
  private final BlockCodes codes = new BlockCodes();
  private final Adler32 sum = new Adler32();

  /** The last bytes of earlier reads, as many as {@link #kept} says, from its start on. */
  private final byte[] window = new byte[WINDOW];

  private At state = At.END;
  private boolean damaged;
  private boolean lastBlock;
  private int kept;
  private int left; // bytes of a stored block, or of a repetition, yet to be made
  private int distance; // of the repetition

  NoiseInflater(PackedInput in) {
    this.in = new PackedBits(in);
  }

  @Override
  public void start(long offset, long length) {
    in.start(offset, length);
    sum.reset();
    state = At.START;
    damaged = false;
    lastBlock = false;
    kept = 0;
    left = 0;
  }

  @Override
  public int read(byte[] into, int from, int to) {
    int at = from;
    while (at < to && state != At.TRAILER && state != At.END) {
      switch (state) {
        case START -> readHeader();
        case BLOCK_HEAD -> readBlockHead();
        case STORED_BLOCK -> at = copyStored(into, at, to);
        default -> {
          at = readCoded(into, from, at, to);
          at = at < to && left == 0 ? readSymbol(into, at) : at;
          at = at < to && left > 0 ? repeat(into, from, at, to) : at;
        }
      }
    }
    sum.update(into, from, at - from);
    keep(into, from, at);
    if (state == At.TRAILER) {
      readTrailer();
    }
    return at - from;
  }

  @Override
  public boolean damaged() {
    return damaged;
  }

  /**
   * Of the symbols of the first block, the share that repeats something, as its codes let expect; 0
   * if it has no codes of its own. To be asked after {@link #start}.
   */
  double repeats() {
    if (state == At.START) {
      readHeader();
    }
    if (state == At.BLOCK_HEAD) {
      readBlockHead();
    }
    return state == At.CODED_BLOCK ? codes.repeats() : 0;
  }

  private void readHeader() {
    if (!in.has(HEADER_BITS)) {
      state = At.END;
      return;
    }
    int method = in.take(Byte.SIZE);
    int flags = in.take(Byte.SIZE);
    if ((method << Byte.SIZE | flags) % 31 != 0
        || (method & 15) != METHOD_DEFLATE
        || method >>> 4 > MOST_WINDOW_SIZE) {
      damage();
    } else {
      state = (flags & WITH_DICTIONARY) == 0 ? At.BLOCK_HEAD : At.END;
    }
  }

  private void readBlockHead() {
    if (lastBlock) {
      in.align();
      state = At.TRAILER;
      return;
    }
    if (!in.has(3)) {
      state = At.END;
      return;
    }
    lastBlock = in.take(1) == 1;
    switch (in.take(2)) {
      case STORED -> readStoredHead();
      case FIXED -> {
        codes.fix();
        state = At.CODED_BLOCK;
      }
      case OWN_CODES -> {
        switch (codes.read(in)) {
          case DONE -> state = At.CODED_BLOCK;
          case CUT_SHORT -> state = At.END;
          case BAD -> damage();
        }
      }
      default -> damage();
    }
  }

  private void readStoredHead() {
    in.align();
    if (!in.has(2 * Short.SIZE)) {
      state = At.END;
      return;
    }
    left = in.take(Short.SIZE);
    int complement = in.take(Short.SIZE);
    if (left != (complement ^ 0xFFFF)) {
      damage();
    } else {
      state = At.STORED_BLOCK;
    }
  }

  private void readTrailer() {
    state = At.END;
    if (in.has(Integer.SIZE)) {
      long stored = in.bits & 0xFFFF_FFFFL;
      damaged = Integer.reverseBytes((int) stored) != (int) sum.getValue();
    }
  }

  private void damage() {
    damaged = true;
    left = 0;
    state = At.END;
  }

  private int copyStored(byte[] into, int at, int to) {
    int some = Math.min(left, to - at);
    int got = in.bytes(into, at, at + some);
    left -= got;
    if (got < some) {
      state = At.END;
    } else if (left == 0) {
      state = At.BLOCK_HEAD;
    }
    return at + got;
  }

  /**
   * Reads symbols as long as there are bits and room for any. Long, because all that changes from
   * symbol to symbol is kept in locals: in fields it would be stored and fetched again for each.
   *
   * @param from where the bytes of this read begin
   */
  private int readCoded(byte[] into, int from, int start, int to) {
    if (left > 0) {
      return start;
    }
    byte[] packed = in.packed;
    int[] literals = codes.literals().table();
    int[] distances = codes.distances().table();
    int lastRefill = in.end - STEP_READS;
    int lastWrite = to - STEP_WRITES;
    int inAt = in.at;
    long bits = in.bits;
    int count = in.count;
    int at = start;
    next:
    while (at <= lastWrite && inAt <= lastRefill) {
      bits |= (long) LONGS.get(packed, inAt) << count;
      inAt += Long.SIZE - 1 - count >>> 3;
      count |= REFILLED;
      int found = literals[(int) bits & literals.length - 1];
      int n = 0; // four look-ups take 44 bits at most
      while ((found & PrefixTable.NO_LITERAL) == 0) {
        SHORTS.set(into, at, PrefixTable.both(found));
        at += PrefixTable.literals(found);
        bits >>>= found;
        count -= PrefixTable.bits(found);
        if (++n == 4) {
          continue next;
        }
        found = literals[(int) bits & literals.length - 1];
      }
      bits |= (long) LONGS.get(packed, inAt) << count;
      inAt += Long.SIZE - 1 - count >>> 3;
      count |= REFILLED;
      long after = bits >>> found;
      int back = distances[(int) after & distances.length - 1];
      int length = PrefixTable.number(found, bits);
      if (!PrefixTable.isValue(found) || length == BlockCodes.END || !PrefixTable.isValue(back)) {
        break;
      }
      int distance = PrefixTable.number(back, after);
      bits = after >>> back;
      count -= PrefixTable.bits(found) + PrefixTable.bits(back);
      if (distance >= Long.BYTES && distance <= at - from && length <= to - Long.BYTES - at) {
        for (int end = at + length, source = at - distance; ; source += Long.BYTES) {
          LONGS.set(into, at, (long) LONGS.get(into, source));
          at += Long.BYTES;
          if (at >= end) {
            at = end;
            break;
          }
        }
      } else {
        this.left = length;
        this.distance = distance;
        at = repeat(into, from, at, to);
        if (this.left > 0 || this.state == At.END) {
          break;
        }
      }
    }
    in.at = inAt;
    in.bits = bits;
    in.count = count;
    return at;
  }

  /** Reads any symbol; of one that repeats, only what is to be repeated. */
  private int readSymbol(byte[] into, int at) {
    in.has(MOST_SYMBOL_BITS);
    int found = codes.literals().walk(in.bits, in.count);
    if (!fits(found, in.count)) {
      return at;
    }
    if ((found & PrefixTable.NO_LITERAL) == 0) {
      into[at] = (byte) PrefixTable.both(found);
      in.drop(PrefixTable.bits(found));
      return at + 1;
    }
    int length = PrefixTable.number(found, in.bits);
    if (length == BlockCodes.END) {
      in.drop(PrefixTable.bits(found));
      state = At.BLOCK_HEAD;
      return at;
    }
    long after = in.bits >>> found;
    int back = codes.distances().walk(after, in.count - PrefixTable.bits(found));
    if (fits(back, in.count - PrefixTable.bits(found))) {
      left = length;
      distance = PrefixTable.number(back, after);
      in.drop(PrefixTable.bits(found) + PrefixTable.bits(back));
    }
    return at;
  }

  /**
   * Whether something was found and all its bits are there; else this is the end, if it was not
   * before.
   */
  private boolean fits(int found, int count) {
    if (found == PrefixTable.NOTHING) {
      damage();
    } else if (found == PrefixTable.CUT_SHORT || PrefixTable.bits(found) > count) {
      state = At.END;
    }
    return state != At.END;
  }

  /** Makes what is left of a repetition, as far as there is room. */
  private int repeat(byte[] into, int from, int start, int to) {
    int source = start - distance;
    if (from - source > kept) {
      damage();
      return start;
    }
    int end = Math.min(to, start + left);
    left -= end - start;
    int at = start;
    for (; at < end && source < from; at++, source++) {
      into[at] = window[kept + source - from];
    }
    for (; at < end; at++, source++) {
      into[at] = into[source];
    }
    return at;
  }

  /** Keeps the last bytes that were made. */
  private void keep(byte[] made, int from, int to) {
    int fresh = Math.min(WINDOW, to - from);
    int stay = Math.min(kept, WINDOW - fresh);
    System.arraycopy(window, kept - stay, window, 0, stay);
    System.arraycopy(made, to - fresh, window, stay, fresh);
    kept = stay + fresh;
  }
}
