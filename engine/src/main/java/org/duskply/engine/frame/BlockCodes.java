package org.duskply.engine.frame;

import java.util.Arrays;

/**
 * The two codes of a deflated block: one of literals and lengths, one of distances (RFC 1951
 * section 3.2).
 */
final class BlockCodes {
  /** Meaning of the symbol that ends a block, as a length. */
  static final int END = 0;

  private static final int END_SYMBOL = 256;
  private static final int LITERALS = 288;
  private static final int DISTANCES = 32;
  private static final int MOST_LITERALS = 286; // of a code that is sent
  private static final int MOST_DISTANCES = 30;

  private static final int LITERAL_BITS = 11; // more would take the table out of the nearest cache
  private static final int DISTANCE_BITS = 10;

  private static final int LENGTHS = 19;
  private static final int LONGEST_LENGTH = 7;
  private static final int[] ORDER = {
    16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15
  };
  private static final int REPEAT = 16;
  private static final int ZEROS = 17;

  private static final int[] LITERAL_MEANINGS = literalMeanings();
  private static final int[] DISTANCE_MEANINGS = distanceMeanings();
  private static final int[] LENGTH_MEANINGS = lengthMeanings();

  /** What the tables hold. */
  static final int BYTES =
      Integer.BYTES * ((1 << LITERAL_BITS) + (1 << DISTANCE_BITS) + (1 << LONGEST_LENGTH))
          + 3 * (LITERALS + DISTANCES + LENGTHS);

  private final PrefixTable literals = new PrefixTable(LITERAL_MEANINGS, LITERAL_BITS);
  private final PrefixTable distances = new PrefixTable(DISTANCE_MEANINGS, DISTANCE_BITS);
  private final PrefixTable lengthCode = new PrefixTable(LENGTH_MEANINGS, LONGEST_LENGTH);
  private final byte[] lengths = new byte[LITERALS + DISTANCES];
  private int literalCount;
  private boolean fixed;

  /** Of literals and lengths; its table gives two literals where it can. */
  PrefixTable literals() {
    return literals;
  }

  /** Of distances. */
  PrefixTable distances() {
    return distances;
  }

  /**
   * The share of symbols that repeat something if each is as likely as the length of its word says;
   * 0 of the fixed codes, whose lengths say nothing.
   */
  double repeats() {
    double share = 0;
    for (int s = END_SYMBOL + 1; s < literalCount && !fixed; s++) {
      share += lengths[s] == 0 ? 0 : Math.scalb(1.0, -lengths[s]);
    }
    return share;
  }

  /** Takes the codes that are fixed (section 3.2.6). */
  void fix() {
    if (fixed) {
      return;
    }
    Arrays.fill(lengths, 0, 144, (byte) 8);
    Arrays.fill(lengths, 144, 256, (byte) 9);
    Arrays.fill(lengths, 256, 280, (byte) 7);
    Arrays.fill(lengths, 280, LITERALS, (byte) 8);
    Arrays.fill(lengths, LITERALS, LITERALS + DISTANCES, (byte) 5);
    fixed = fill(LITERALS, DISTANCES);
  }

  /**
   * Reads the codes that stand before a block (section 3.2.7).
   *
   * @return what is in the way, {@link Outcome#DONE} if nothing is
   */
  Outcome read(PackedBits in) {
    fixed = false;
    if (!in.has(14)) {
      return Outcome.CUT_SHORT;
    }
    literalCount = in.take(5) + 257;
    int distanceCount = in.take(5) + 1;
    int sent = in.take(4) + 4;
    if (literalCount > MOST_LITERALS || distanceCount > MOST_DISTANCES) {
      return Outcome.BAD;
    }
    Arrays.fill(lengths, 0, LENGTHS, (byte) 0);
    for (int i = 0; i < sent; i++) {
      if (!in.has(3)) {
        return Outcome.CUT_SHORT;
      }
      lengths[ORDER[i]] = (byte) in.take(3);
    }
    if (!lengthCode.fill(lengths, 0, LENGTHS, false)) {
      return Outcome.BAD;
    }
    Outcome outcome = readLengths(in, literalCount + distanceCount);
    if (outcome != Outcome.DONE) {
      return outcome;
    }
    return lengths[END_SYMBOL] != 0 && fill(literalCount, distanceCount)
        ? Outcome.DONE
        : Outcome.BAD;
  }

  private Outcome readLengths(PackedBits in, int wanted) {
    for (int i = 0; i < wanted; ) {
      boolean whole = in.has(LONGEST_LENGTH + 7);
      int finding = lengthCode.table()[(int) in.bits & lengthCode.mask()];
      if (!whole && PrefixTable.bits(finding) > in.count) {
        return Outcome.CUT_SHORT;
      }
      int symbol = PrefixTable.number(finding, in.bits);
      in.drop(PrefixTable.bits(finding));
      if (symbol < REPEAT) {
        lengths[i++] = (byte) symbol;
        continue;
      }
      int extraBits = symbol == REPEAT ? 2 : symbol == ZEROS ? 3 : 7;
      if (!in.has(extraBits)) {
        return Outcome.CUT_SHORT;
      }
      int times = in.take(extraBits) + (symbol <= ZEROS ? 3 : 11);
      if (times > wanted - i || symbol == REPEAT && i == 0) {
        return Outcome.BAD;
      }
      Arrays.fill(lengths, i, i + times, symbol == REPEAT ? lengths[i - 1] : 0);
      i += times;
    }
    return Outcome.DONE;
  }

  private boolean fill(int literals, int distances) {
    if (!this.literals.fill(lengths, 0, literals, true)
        || !this.distances.fill(lengths, literals, distances, true)) {
      return false;
    }
    this.literals.pairUp();
    return true;
  }

  private static int[] literalMeanings() {
    int[] meanings = new int[LITERALS];
    for (int s = 0; s < END_SYMBOL; s++) {
      meanings[s] = PrefixTable.literal(s);
    }
    meanings[END_SYMBOL] = PrefixTable.value(END, 0);
    int base = 3;
    for (int n = 0; n < 28; n++) {
      int extraBits = Math.max(0, n / 4 - 1);
      meanings[END_SYMBOL + 1 + n] = PrefixTable.value(base, extraBits);
      base += 1 << extraBits;
    }
    meanings[285] = PrefixTable.value(258, 0);
    Arrays.fill(meanings, MOST_LITERALS, LITERALS, PrefixTable.NEVER);
    return meanings;
  }

  private static int[] distanceMeanings() {
    int[] meanings = new int[DISTANCES];
    int base = 1;
    for (int s = 0; s < MOST_DISTANCES; s++) {
      int extraBits = Math.max(0, s / 2 - 1);
      meanings[s] = PrefixTable.value(base, extraBits);
      base += 1 << extraBits;
    }
    Arrays.fill(meanings, MOST_DISTANCES, DISTANCES, PrefixTable.NEVER);
    return meanings;
  }

  private static int[] lengthMeanings() {
    int[] meanings = new int[LENGTHS];
    for (int s = 0; s < LENGTHS; s++) {
      meanings[s] = PrefixTable.value(s, 0);
    }
    return meanings;
  }

  /** How an attempt to read went. */
  enum Outcome {
    /** It is read. */
    DONE,
    /** The bytes ran out. */
    CUT_SHORT,
    /** It is no deflated data. */
    BAD
  }
}
