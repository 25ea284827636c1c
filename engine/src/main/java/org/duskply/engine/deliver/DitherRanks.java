package org.duskply.engine.deliver;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.StringTokenizer;

/**
 * The order in which the pixels of a square of 64 × 64 are lit as it brightens, 0 to 4095: made by
 * the void-and-cluster method (R. Ulichney, "The void-and-cluster method for dither array
 * generation", Proc. SPIE 1913, 1993), so that whatever the share of lit pixels they lie evenly and
 * without pattern, also where squares meet. The table is a resource; a test makes it anew and
 * compares.
 */
final class DitherRanks {
  /** Columns and rows of the square, a power of two. */
  static final int SIDE = 64;

  private static final String RESOURCE = "dither-ranks.txt";

  private DitherRanks() {}

  /** The ranks, row by row. */
  static short[] read() {
    StringTokenizer words = new StringTokenizer(text());
    short[] ranks = new short[SIDE * SIDE];
    for (int i = 0; i < ranks.length; i++) {
      ranks[i] = Short.parseShort(words.nextToken());
    }
    return ranks;
  }

  private static String text() {
    try (InputStream in = DitherRanks.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException(RESOURCE + " is missing from the jar");
      }
      return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
