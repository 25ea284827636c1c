package org.duskply.engine.deliver;

import java.util.Arrays;

/**
 * LZW as TIFF 6.0 section 13 has it: codes of 9 to 12 bits, the highest bit first, widened one code
 * early; the table is cleared when entry 4094 has been added, so that no code needs 13 bits. A
 * strip begins with a clear code and ends with the end code and bits of 0 up to a whole byte.
 *
 * <p>The string so far is a code; the table finds the code of that string and one more byte by
 * hashing the two, with the next free place where they collide.
 */
final class LzwPacker implements StripPacker {
  private static final int CLEAR = 256;
  private static final int END = 257;
  private static final int FIRST_FREE = 258;
  private static final int LAST_FREE = 4094;
  private static final int LEAST_WIDTH = 9;
  private static final int HASH_BITS = 14; // four places an entry: few collisions
  private static final int PLACES = 1 << HASH_BITS;
  private static final int GOLDEN = 0x9E3779B1; // 2³²/φ: spreads neighbouring keys

  /** What the table holds. */
  static final long BYTES = PLACES * (Integer.BYTES + Short.BYTES) + 1024;

  /** {@code string·256 + byte + 1}; 0 where the place is free. */
  private final int[] keys = new int[PLACES];

  private final short[] codes = new short[PLACES];
  private int free;
  private int width;
  private int bits;
  private int bitCount;

  @Override
  public void pack(byte[] raw, int count, Growing out) {
    bitCount = 0;
    width = LEAST_WIDTH;
    put(CLEAR, out);
    clear();
    int string = raw[0] & 0xFF;
    for (int i = 1; i < count; i++) {
      int next = raw[i] & 0xFF;
      int place = place(string << 8 | next);
      if (keys[place] != 0) {
        string = codes[place];
      } else {
        put(string, out);
        keys[place] = (string << 8 | next) + 1;
        codes[place] = (short) free;
        grow(out);
        string = next;
      }
    }
    put(string, out);
    grow(out); // the reader adds an entry here too
    put(END, out);
    if (bitCount > 0) {
      out.add(bits << (8 - bitCount));
    }
  }

  private void clear() {
    Arrays.fill(keys, 0);
    free = FIRST_FREE;
    width = LEAST_WIDTH;
  }

  /** Counts the entry that was added: codes become wider, or the table starts anew. */
  private void grow(Growing out) {
    if (free == LAST_FREE) {
      put(CLEAR, out);
      clear();
      return;
    }
    free++;
    if (free == 1 << width) {
      width++;
    }
  }

  /** Where an entry stands, or the free place where it would. */
  private int place(int key) {
    int place = (key * GOLDEN) >>> (Integer.SIZE - HASH_BITS);
    while (keys[place] != 0 && keys[place] != key + 1) {
      place = (place + 1) & (PLACES - 1);
    }
    return place;
  }

  private void put(int code, Growing out) {
    bits = bits << width | code; // at most 7 bits wait, so 19 are needed
    bitCount += width;
    while (bitCount >= 8) {
      bitCount -= 8;
      out.add(bits >> bitCount);
    }
  }

  /** At most a code of 12 bits for each byte; and a strip's clear and end. */
  static int room(long raw) {
    return Math.toIntExact(raw + raw / 2 + 256);
  }
}
