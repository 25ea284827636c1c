package org.duskply.engine.frame;

import java.util.List;
import java.util.Locale;

/**
 * Which warnings of the general-purpose image readers mean missing or wrong pixels: the readers
 * themselves return a full picture either way.
 */
final class ReaderWarnings {
  /** Parts of the warnings of the JDK's JPEG reader and the library behind it. */
  private static final List<String> DAMAGE =
      List.of("truncated", "premature end", "bad huffman", "bad arithmetic", "instead of rst");

  private ReaderWarnings() {}

  /** Whether pixels are missing or wrong. */
  static boolean damage(String warning) {
    String text = warning.toLowerCase(Locale.ROOT);
    return DAMAGE.stream().anyMatch(text::contains);
  }
}
