package org.duskply.engine.deliver;

import java.util.Arrays;

/**
 * A prefix code of least total length (D. A. Huffman, 1952) whose words are no longer than some
 * limit, in the canonical form of RFC 1951 section 3.2.2. Immutable.
 */
final class HuffmanCode {
  private static final int LENGTH_SHIFT = 16;
  private static final int MOST_BITS = 15;

  private final int[] words;

  private HuffmanCode(int[] words) {
    this.words = words;
  }

  /**
   * The code for symbols that occur so many times each; those that do not occur get no word.
   *
   * @param counts of each symbol, their sum less than 2³¹
   * @param longest most bits of a word, at most 15, and enough for that many symbols. Where the
   *     best code has longer words, rare symbols are counted as less rare until it has not: some
   *     bits in a million are lost.
   */
  static HuffmanCode of(int[] counts, int longest) {
    int[] used = counts.clone();
    int[] lengths = lengths(used);
    while (longest(lengths) > longest) {
      for (int s = 0; s < used.length; s++) {
        used[s] = (used[s] + 1) >>> 1;
      }
      lengths = lengths(used);
    }
    return new HuffmanCode(words(lengths));
  }

  /** Bits of a symbol's word; 0 where it has none. */
  int length(int symbol) {
    return words[symbol] >>> LENGTH_SHIFT;
  }

  /**
   * Words of all symbols: the bits in the order in which they are sent, the first lowest, and from
   * bit 16 on how many. The live array.
   */
  int[] words() {
    return words;
  }

  /** Bits that it takes to send symbols that occur so many times each. */
  long cost(int[] counts) {
    long bits = 0;
    for (int s = 0; s < counts.length; s++) {
      bits += (long) counts[s] * length(s);
    }
    return bits;
  }

  private static int longest(int[] lengths) {
    int longest = 0;
    for (int length : lengths) {
      longest = Math.max(longest, length);
    }
    return longest;
  }

  /** Lengths of the words of the best code: the two rarest are joined until one is left. */
  private static int[] lengths(int[] counts) {
    int[] lengths = new int[counts.length];
    long[] leaves = rarestFirst(counts);
    int n = leaves.length;
    if (n == 1) {
      lengths[(int) leaves[0]] = 1;
    }
    if (n < 2) {
      return lengths;
    }
    // Nodes: leaves from the rarest, then the joined ones, which come about from the rarest too.
    long[] weight = new long[2 * n - 1];
    int[] parent = new int[2 * n - 1];
    for (int i = 0; i < n; i++) {
      weight[i] = leaves[i] >>> 32;
    }
    int leaf = 0;
    int joined = n;
    for (int made = n; made < 2 * n - 1; made++) {
      for (int side = 0; side < 2; side++) {
        boolean takeLeaf = joined == made || (leaf < n && weight[leaf] <= weight[joined]);
        int least = takeLeaf ? leaf++ : joined++;
        weight[made] += weight[least];
        parent[least] = made;
      }
    }
    int[] depth = new int[2 * n - 1];
    for (int i = 2 * n - 3; i >= 0; i--) {
      depth[i] = depth[parent[i]] + 1;
    }
    for (int i = 0; i < n; i++) {
      lengths[(int) leaves[i]] = depth[i];
    }
    return lengths;
  }

  /** The symbols that occur: how often in the upper half, which in the lower. */
  private static long[] rarestFirst(int[] counts) {
    long[] leaves = new long[counts.length];
    int n = 0;
    for (int s = 0; s < counts.length; s++) {
      if (counts[s] > 0) {
        leaves[n++] = (long) counts[s] << 32 | s;
      }
    }
    Arrays.sort(leaves, 0, n);
    return Arrays.copyOf(leaves, n);
  }

  /** Words of one length rise with their symbols, and longer ones stand behind shorter ones. */
  private static int[] words(int[] lengths) {
    int[] ofLength = new int[MOST_BITS + 1];
    for (int length : lengths) {
      ofLength[length]++;
    }
    int[] next = new int[MOST_BITS + 1];
    for (int length = 2; length <= MOST_BITS; length++) {
      next[length] = next[length - 1] + ofLength[length - 1] << 1;
    }
    int[] words = new int[lengths.length];
    for (int s = 0; s < lengths.length; s++) {
      int length = lengths[s];
      if (length > 0) {
        words[s] = Integer.reverse(next[length]++) >>> (32 - length) | length << LENGTH_SHIFT;
      }
    }
    return words;
  }
}
