package org.duskply.engine.frame;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Writes deflated blocks whose codes and symbols are drawn at random (RFC 1951 section 3.2). */
final class RandomBlocks {
  private static final int[] ORDER = {
    16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15
  };

  private final Random random;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private int waiting;
  private int waitingBits;
  private int made;

  RandomBlocks(Random random) {
    this.random = random;
  }

  /** A stream of so many blocks, with a checksum that is wrong. */
  byte[] stream(int blocks) {
    put(0x9C78, 16);
    for (int b = 0; b < blocks; b++) {
      put(b == blocks - 1 ? 1 : 0, 1);
      if (random.nextInt(5) == 0) {
        put(1, 2);
        symbols(fixedLiterals(), evenDistances());
      } else {
        put(2, 2);
        int literals = 257 + random.nextInt(30);
        int distances = 1 + random.nextInt(30);
        int[] literalLengths = lengths(literals, 1 + random.nextInt(literals), 15);
        literalLengths[256] =
            literalLengths[256] == 0 ? swapIn(literalLengths) : literalLengths[256];
        int[] distanceLengths = lengths(distances, 1 + random.nextInt(distances), 15);
        head(literalLengths, distanceLengths);
        symbols(literalLengths, distanceLengths);
      }
    }
    put(random.nextInt(), 32);
    put(0, 7);
    return out.toByteArray();
  }

  /** A stream whose first symbol repeats what is not there. */
  byte[] repeatingAtOnce() {
    put(0x9C78, 16);
    put(1, 1);
    put(1, 2);
    put(1 << 6, 7); // the symbol 257: six bits of 0, then one of 1
    put(0, 5); // one byte back
    put(0, 7); // the end
    put(0, 24);
    return out.toByteArray();
  }

  /** A stream of so many bytes of 0, then a repetition from before them, and as many more. */
  byte[] reachingBefore(int bytes) {
    int[] literals = words(fixedLiterals());
    put(0x9C78, 16);
    put(1, 1);
    put(1, 2);
    for (int i = 0; i < bytes; i++) {
      put(literals[0], 8);
    }
    put(literals[257], 7);
    put(words(evenDistances())[20], 5); // from 1025 on
    put(0, 9);
    for (int i = 0; i < bytes; i++) {
      put(literals[0], 8);
    }
    put(literals[256], 7);
    put(0, 47);
    return out.toByteArray();
  }

  private static int[] evenDistances() {
    int[] lengths = new int[32];
    Arrays.fill(lengths, 5);
    return lengths;
  }

  private static int[] fixedLiterals() {
    int[] lengths = new int[288];
    for (int s = 0; s < lengths.length; s++) {
      lengths[s] = s < 144 ? 8 : s < 256 ? 9 : s < 280 ? 7 : 8;
    }
    return lengths;
  }

  /** Gives the symbol that ends a block the word of another. */
  private static int swapIn(int[] lengths) {
    for (int s = 0; ; s++) {
      if (lengths[s] > 0) {
        int length = lengths[s];
        lengths[s] = 0;
        return length;
      }
    }
  }

  /** Lengths of a full code for some of the symbols: leaves of a tree, split at random. */
  private int[] lengths(int symbols, int used, int longest) {
    List<Integer> leaves = new ArrayList<>(List.of(used == 1 ? 1 : 0));
    while (leaves.size() < used) {
      int last = random.nextBoolean() ? leaves.size() - 1 : random.nextInt(leaves.size());
      int depth = leaves.get(last);
      if (depth < longest) {
        leaves.set(last, depth + 1);
        leaves.add(depth + 1);
      } else {
        Collections.shuffle(leaves, random);
      }
    }
    int[] lengths = new int[symbols];
    List<Integer> places = new ArrayList<>();
    for (int s = 0; s < symbols; s++) {
      places.add(s);
    }
    Collections.shuffle(places, random);
    for (int i = 0; i < used; i++) {
      lengths[places.get(i)] = leaves.get(i);
    }
    return lengths;
  }

  /** All lengths one by one, by words of 5 bits. */
  private void head(int[] literals, int[] distances) {
    put(literals.length - 257, 5);
    put(distances.length - 1, 5);
    put(15, 4);
    int[] own = new int[19];
    for (int s = 0; s < 19; s++) {
      own[s] = s < 13 ? 4 : 5;
    }
    for (int symbol : ORDER) {
      put(own[symbol], 3);
    }
    int[] words = words(own);
    for (int[] lengths : List.of(literals, distances)) {
      for (int length : lengths) {
        put(words[length], own[length]);
      }
    }
  }

  private void symbols(int[] literalLengths, int[] distanceLengths) {
    int[] literals = words(literalLengths);
    int[] distances = words(distanceLengths);
    boolean wrong = random.nextInt(20) == 0;
    for (int n = random.nextInt(6_000); n > 0; n--) {
      int s = random.nextInt(literals.length);
      int d = random.nextInt(distances.length);
      int lengthExtra = s < 265 || s >= 285 ? 0 : (s - 261) / 4;
      int distanceExtra = d < 4 ? 0 : d / 2 - 1;
      int nearest = d < 4 ? d + 1 : (2 + d % 2 << distanceExtra) + 1;
      boolean known = s < 286 && (s < 256 || d < 30 && nearest + (1 << distanceExtra) <= made);
      boolean sent = literalLengths[s] > 0 && (s < 256 || distanceLengths[d] > 0);
      if (s == 256 || !sent || !known && !(wrong && random.nextInt(1_000) == 0)) {
        continue;
      }
      put(literals[s], literalLengths[s]);
      made++;
      if (s > 256) {
        put(random.nextInt(), lengthExtra);
        put(distances[d], distanceLengths[d]);
        put(random.nextInt(), distanceExtra);
        made += 2; // at least
      }
    }
    put(literals[256], literalLengths[256]);
  }

  /** Words of a code, the first bit lowest (section 3.2.2). */
  private static int[] words(int[] lengths) {
    int[] words = new int[lengths.length];
    int word = 0;
    for (int length = 1; length <= 15; length++, word *= 2) {
      for (int s = 0; s < lengths.length; s++) {
        if (lengths[s] == length) {
          words[s] = Integer.reverse(word++) >>> 32 - length;
        }
      }
    }
    return words;
  }

  private void put(int value, int bits) {
    for (int i = 0; i < bits; i++) {
      waiting |= (value >>> i & 1) << waitingBits++;
      if (waitingBits == 8) {
        out.write(waiting);
        waiting = 0;
        waitingBits = 0;
      }
    }
  }
}
