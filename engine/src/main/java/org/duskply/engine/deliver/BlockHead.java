package org.duskply.engine.deliver;

/**
 * What stands before the symbols of a deflate block that has codes of its own (RFC 1951 section
 * 3.2.7): the lengths of the words of both codes, runs of them drawn together, themselves in a
 * Huffman code whose lengths come first.
 */
final class BlockHead {
  /** Bits of the largest head: its counts, 19 lengths of 3 bits, 287 of 7 and what they repeat. */
  static final int MOST_BITS = 14 + 3 * 19 + 287 * (7 + 7);

  private static final int[] ORDER = {
    16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15
  };
  private static final int LENGTHS = 19;
  private static final int LONGEST = 7;
  private static final int REPEAT = 16; // the length before, 3 to 6 times
  private static final int ZEROS = 17; // 3 to 10
  private static final int MANY_ZEROS = 18; // 11 to 138
  private static final int LEAST_LITERALS = 257;

  private final int literals;
  private final int[] symbols;
  private final int[] extras;
  private final HuffmanCode code;
  private final int sent; // of ORDER
  private int count;

  /**
   * The head for a code of literals and lengths, and one distance.
   *
   * @param matches whether there are matches, all one byte back
   */
  BlockHead(HuffmanCode literalCode, boolean matches) {
    int last = literalCode.words().length;
    while (last > LEAST_LITERALS && literalCode.length(last - 1) == 0) {
      last--;
    }
    literals = last;
    int[] lengths = new int[last + 1];
    for (int s = 0; s < last; s++) {
      lengths[s] = literalCode.length(s);
    }
    lengths[last] = matches ? 1 : 0;
    symbols = new int[lengths.length];
    extras = new int[lengths.length];
    drawTogether(lengths);
    int[] counts = new int[LENGTHS];
    for (int i = 0; i < count; i++) {
      counts[symbols[i]]++;
    }
    code = HuffmanCode.of(counts, LONGEST);
    int used = LENGTHS;
    while (code.length(ORDER[used - 1]) == 0) {
      used--;
    }
    sent = Math.max(4, used);
  }

  private void drawTogether(int[] lengths) {
    for (int i = 0; i < lengths.length; ) {
      int length = lengths[i];
      int end = i + 1;
      while (end < lengths.length && lengths[end] == length) {
        end++;
      }
      if (length != 0) {
        add(length, 0);
        i++;
      }
      i = length == 0 ? zeros(i, end) : repeats(i, end);
      while (i < end) {
        add(length, 0);
        i++;
      }
    }
  }

  private int zeros(int from, int end) {
    int i = from;
    while (end - i >= 11) {
      int some = Math.min(138, end - i);
      add(MANY_ZEROS, some - 11);
      i += some;
    }
    if (end - i >= 3) {
      add(ZEROS, end - i - 3);
      i = end;
    }
    return i;
  }

  private int repeats(int from, int end) {
    int i = from;
    while (end - i >= 3) {
      int some = Math.min(6, end - i);
      add(REPEAT, some - 3);
      i += some;
    }
    return i;
  }

  private void add(int symbol, int extra) {
    symbols[count] = symbol;
    extras[count] = extra;
    count++;
  }

  /** How many bits it takes. */
  long bits() {
    long bits = 14 + 3L * sent;
    for (int i = 0; i < count; i++) {
      bits += code.length(symbols[i]) + extraBits(symbols[i]);
    }
    return bits;
  }

  /** Puts it. */
  void put(DeflateBits out) {
    out.put(literals - LEAST_LITERALS, 5);
    out.put(0, 5); // one distance
    out.put(sent - 4, 4);
    for (int i = 0; i < sent; i++) {
      out.put(code.length(ORDER[i]), 3);
    }
    for (int i = 0; i < count; i++) {
      out.word(code, symbols[i]);
      out.put(extras[i], extraBits(symbols[i]));
    }
  }

  private static int extraBits(int symbol) {
    return switch (symbol) {
      case REPEAT -> 2;
      case ZEROS -> 3;
      case MANY_ZEROS -> 7;
      default -> 0;
    };
  }
}
