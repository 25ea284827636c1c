package org.duskply.engine.frame;

import java.util.Arrays;

/**
 * A prefix code of deflated data (RFC 1951 section 3.2.2), ready to be looked up: what the next
 * bits stand for, and how many of them it takes. It is filled again for each block.
 *
 * <p>A table is indexed by the next bits, the first lowest. Each of its numbers, a <i>finding</i>,
 * says in its low 6 bits how many bits are taken. A literal stands in bits 16 to 23. Where a second
 * literal follows within the bits that were looked at, it stands in bits 24 to 31, so that one
 * look-up gives two bytes: of 16-bit samples, whose words are short for one byte and long for the
 * other, most times. All else has {@link #NO_LITERAL} set.
 *
 * <p>The table covers words of some bits only; longer ones are as rare as they are long.
 */
final class PrefixTable {
  /** Most bits of a word. */
  static final int LONGEST = 15;

  /** Set in a finding that is no literal. */
  static final int NO_LITERAL = 1 << 15;

  /** What {@link #walk} answers where the bits in hand are no whole word. */
  static final int CUT_SHORT = -1;

  /** A finding that gives nothing: here the table does not know, in {@link #walk} no word is so. */
  static final int NOTHING = NO_LITERAL;

  /** What a symbol means that may have a word and may not be sent. */
  static final int NEVER = -2;

  private static final int COUNT_SHIFT = 8;
  private static final int VALUE_SHIFT = 16;
  private static final int BITS = 63;
  private static final int FIRST_LITERAL = 0xFF << VALUE_SHIFT;

  private final int[] meanings;
  private final int tableBits;
  private final int[] table;
  private final short[] symbols;
  private final int[] ofLength = new int[LONGEST + 1];
  private final int[] nextWord = new int[LONGEST + 1];
  private final int[] nextPlace = new int[LONGEST + 1];

  /**
   * For codes of one alphabet.
   *
   * @param meanings of each symbol, made by {@link #literal} or {@link #value}, or {@link #NEVER}
   * @param tableBits bits that are looked at together
   */
  PrefixTable(int[] meanings, int tableBits) {
    this.meanings = meanings;
    this.tableBits = tableBits;
    this.table = new int[1 << tableBits];
    this.symbols = new short[meanings.length];
  }

  /** What a symbol means that is a byte. */
  static int literal(int value) {
    return 1 << COUNT_SHIFT | value << VALUE_SHIFT;
  }

  /**
   * What a symbol means that is a number.
   *
   * @param base least number, below 2¹⁵
   * @param extraBits how many bits that are added to it follow the word
   */
  static int value(int base, int extraBits) {
    return NO_LITERAL | extraBits | base << VALUE_SHIFT;
  }

  /** How many literals a finding holds that is of literals: 1 or 2. */
  static int literals(int finding) {
    return finding >>> COUNT_SHIFT & 3;
  }

  /** The literals, the first in the low byte. */
  static short both(int finding) {
    return (short) (finding >>> VALUE_SHIFT);
  }

  /** Bits that a finding takes. */
  static int bits(int finding) {
    return finding & BITS;
  }

  /** Whether the finding is a number. */
  static boolean isValue(int finding) {
    return (finding & BITS) != 0 && (finding & NO_LITERAL) != 0;
  }

  /** The number that a finding and the bits stand for that it was looked up by. */
  static int number(int finding, long bits) {
    int word = finding >>> COUNT_SHIFT & LONGEST;
    return (finding >>> VALUE_SHIFT) + ((int) (bits & ~(-1L << finding)) >>> word);
  }

  /** By the next bits. Live. */
  int[] table() {
    return table;
  }

  /** What picks the bits out by which the table is indexed. */
  int mask() {
    return table.length - 1;
  }

  /**
   * Fills it for other words.
   *
   * @param lengths of the words of all symbols, 0 for those without one
   * @param from where in it the first symbol's is
   * @param count how many symbols there are
   * @param maybeOne whether a code is let pass that has a word of one bit only, or none
   * @return false if there can be no such code, or some bits would stand for nothing
   */
  boolean fill(byte[] lengths, int from, int count, boolean maybeOne) {
    Arrays.fill(ofLength, 0);
    for (int s = 0; s < count; s++) {
      ofLength[lengths[from + s]]++;
    }
    ofLength[0] = 0;
    int free = 1; // words of the length in turn that no shorter word begins
    int longest = 0;
    int place = 0;
    int word = 0;
    for (int length = 1; length <= LONGEST; length++) {
      nextPlace[length] = place;
      nextWord[length] = word;
      place += ofLength[length];
      word = word + ofLength[length] << 1;
      free = 2 * free - ofLength[length];
      if (free < 0) {
        return false;
      }
      longest = ofLength[length] > 0 ? length : longest;
    }
    if (free > 0 && (longest > 1 || !maybeOne)) {
      return false;
    }
    if (free > 0 || longest > tableBits) {
      Arrays.fill(table, NOTHING);
    }
    for (int s = 0; s < count; s++) {
      int length = lengths[from + s];
      if (length > 0) {
        symbols[nextPlace[length]++] = (short) s;
      }
      if (length > 0 && length <= tableBits) {
        put(s, length, Integer.reverse(nextWord[length]++) >>> Integer.SIZE - length);
      }
    }
    return true;
  }

  private void put(int symbol, int length, int word) {
    int finding = finding(symbol, length);
    for (int i = word; i < table.length; i += 1 << length) {
      table[i] = finding;
    }
  }

  private int finding(int symbol, int length) {
    int meaning = meanings[symbol];
    if (meaning == NEVER) {
      return NOTHING;
    }
    int word = (meaning & NO_LITERAL) == 0 ? 0 : length << COUNT_SHIFT;
    return meaning + length + word;
  }

  /** Lets the table give two literals where it can. */
  void pairUp() {
    int[] table = this.table;
    // From above, for what follows a word is looked up further down, and must be single yet.
    for (int i = table.length - 1; i >= 0; i--) {
      int first = table[i];
      int second = table[i >>> first];
      int bits = (first & BITS) + (second & BITS);
      if (((first | second) & NO_LITERAL) == 0 && bits <= tableBits) {
        table[i] =
            bits | 2 << COUNT_SHIFT | first & FIRST_LITERAL | (second & FIRST_LITERAL) << Byte.SIZE;
      }
    }
  }

  /**
   * What a word of any length stands for, found bit by bit.
   *
   * @param bits the next ones, the first lowest
   * @param count how many of them there are
   * @return a finding of one symbol, {@link #CUT_SHORT} or {@link #NOTHING}
   */
  int walk(long bits, int count) {
    int word = 0;
    int first = 0; // word of the length in turn
    int place = 0;
    for (int length = 1; length <= LONGEST; length++) {
      if (length > count) {
        return CUT_SHORT;
      }
      word = 2 * word + (int) (bits >>> length - 1 & 1);
      first = 2 * first;
      if (word - first < ofLength[length]) {
        return finding(symbols[place + word - first], length);
      }
      first += ofLength[length];
      place += ofLength[length];
    }
    return NOTHING;
  }
}
