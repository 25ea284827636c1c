package org.duskply.engine.deliver;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Deflates without looking for matches: blocks with Huffman codes of their own (RFC 1951 section
 * 3.2.7) in which every byte stands for itself, but for long runs of 0, which is what prediction
 * makes of a flat area. In the noise that a camera leaves in the low bytes of 16-bit samples there
 * are no matches to be found, and not to look for them is many times as fast. For one thread.
 */
final class LiteralPacker implements BlockPacker {
  /** Bytes of a block: as many as one that is stored may hold. */
  static final int BLOCK = 65_535;

  /** Bytes that it holds. */
  static final long BYTES = 2L * BLOCK;

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  private static final int MARK = 1 + Integer.BYTES; // bytes of a block that stores none
  private static final int NOTHING_STORED = 0xFFFF_0000; // its length, and that inverted
  private static final int END = 256;
  private static final int LONGEST_MATCH = 285; // stands for MATCH bytes
  private static final int MATCH = 258;
  private static final int LEAST_RUN = MATCH + 1; // the first byte of a run stands for itself

  private final DeflateBits bits = new DeflateBits();
  private final int[] tallies = new int[4 * 256];
  private final int[] counts = new int[LONGEST_MATCH + 1];
  private final int[] runs = new int[2 * (BLOCK / LEAST_RUN + 1)]; // start and end of each
  private int runCount;

  @Override
  public void pack(byte[] raw, int count, boolean last, Growing out) {
    for (int from = 0; from < count || from == 0; from += BLOCK) {
      int to = Math.min(count, from + BLOCK);
      block(raw, from, to, last && to == count);
      bits.moveTo(out);
    }
    bits.room(1 + MARK);
    if (!last) {
      bits.put(0, 3); // stored, and not the last
    }
    bits.align();
    if (!last) {
      bits.put(NOTHING_STORED, 32);
    }
    bits.moveTo(out);
  }

  private void block(byte[] raw, int from, int to, boolean last) {
    count(raw, from, to);
    HuffmanCode code = HuffmanCode.of(counts, DeflateBits.LONGEST);
    BlockHead head = new BlockHead(code, runCount > 0);
    long packed = head.bits() + code.cost(counts) + counts[LONGEST_MATCH];
    bits.room(to - from + BlockHead.MOST_BITS / 8 + Long.BYTES);
    bits.put(last ? 1 : 0, 1);
    if (packed > 8L * (to - from)) {
      store(raw, from, to);
    } else {
      bits.put(2, 2); // codes of its own
      head.put(bits);
      put(code, raw, from, to);
    }
  }

  /** As it is: bytes that no code makes shorter. */
  private void store(byte[] raw, int from, int to) {
    bits.put(0, 2);
    bits.align();
    int length = to - from;
    bits.put(length | ~length << 16, 32);
    bits.bytes(raw, from, length);
  }

  private void put(HuffmanCode code, byte[] raw, int from, int to) {
    int at = from;
    for (int r = 0; r < runCount; r++) {
      bits.words(code, raw, at, runs[2 * r] + 1);
      at = runs[2 * r] + 1;
      for (; runs[2 * r + 1] - at >= MATCH; at += MATCH) {
        bits.word(code, LONGEST_MATCH);
        bits.put(0, 1); // the same as one byte back
      }
    }
    bits.words(code, raw, at, to);
    bits.word(code, END);
  }

  /** Counts the symbols of a block, and finds its runs. */
  private void count(byte[] raw, int from, int to) {
    Arrays.fill(tallies, 0);
    runCount = 0;
    int matches = 0;
    int i = from;
    while (i <= to - Long.BYTES) {
      long eight = (long) LONGS.get(raw, i);
      if (eight == 0) {
        int end = endOfZeros(raw, i, to);
        int inRun = end - i < LEAST_RUN ? 0 : (end - i - 1) / MATCH;
        if (inRun > 0) {
          runs[2 * runCount] = i;
          runs[2 * runCount + 1] = end;
          runCount++;
        }
        matches += inRun;
        tallies[0] += end - i - inRun * MATCH;
        i = end;
        continue;
      }
      tally(eight);
      i += Long.BYTES;
    }
    for (; i < to; i++) {
      tallies[raw[i] & 0xFF]++;
    }
    for (int s = 0; s < 256; s++) {
      counts[s] = tallies[s] + tallies[256 + s] + tallies[512 + s] + tallies[768 + s];
    }
    counts[END] = 1;
    counts[LONGEST_MATCH] = matches;
  }

  /** In four places by turns: a count that follows itself at once waits for its own store. */
  private void tally(long eight) {
    int[] tallies = this.tallies;
    int low = (int) eight;
    int high = (int) (eight >>> 32);
    tallies[low & 0xFF]++;
    tallies[256 + (low >>> 8 & 0xFF)]++;
    tallies[512 + (low >>> 16 & 0xFF)]++;
    tallies[768 + (low >>> 24)]++;
    tallies[high & 0xFF]++;
    tallies[256 + (high >>> 8 & 0xFF)]++;
    tallies[512 + (high >>> 16 & 0xFF)]++;
    tallies[768 + (high >>> 24)]++;
  }

  private static int endOfZeros(byte[] raw, int from, int to) {
    int i = from;
    while (i < to && raw[i] == 0) {
      i++;
    }
    return i;
  }
}
