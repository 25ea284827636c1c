package org.duskply.engine;

import java.util.List;

/** Several things in one sentence. */
final class ListWords {
  private ListWords() {}

  /** {@code a, b and c}. */
  static String and(List<String> things) {
    int end = things.size() - 1;
    return end < 1
        ? String.join("", things)
        : String.join(", ", things.subList(0, end)) + " and " + things.get(end);
  }

  /** {@code the mask a} or {@code the masks a, b and c}. */
  static String the(String noun, List<String> names) {
    return "the " + noun + (names.size() == 1 ? " " : "s ") + and(names);
  }

  /** The same at the beginning of a sentence. */
  static String capital(String words) {
    return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
