package org.duskply.engine.deliver;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Makes text fit to be one part of a path on the file systems of the three desktop systems, the
 * same way on each, so that a recipe gives the same names everywhere.
 */
final class SafeName {
  /** Longest part in UTF-8 bytes: below the 255 that file systems hold. */
  static final int MAX_BYTES = 200;

  /** Longest ending that is kept when a name is shortened. */
  private static final int MAX_ENDING = 16;

  /** Stands for what cannot be in a name, and for nothing at all. */
  private static final String STAND_IN = "-";

  /** Names of devices, with any ending: common practice on the systems concerned, no source. */
  private static final Pattern RESERVED = Pattern.compile("con|prn|aux|nul|(com|lpt)[0-9¹²³]");

  private SafeName() {}

  /**
   * A placeholder's value: composed (NFC), separators and what a file system refuses as {@code -},
   * invisible characters left out, as are dots and spaces at the ends; never empty.
   */
  static String value(String text) {
    StringBuilder out = new StringBuilder();
    Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(c -> add(out, c));
    return trim(out.toString());
  }

  private static void add(StringBuilder out, int c) {
    switch (Character.getType(c)) {
      case Character.FORMAT, Character.CONTROL -> {} // they turn or hide what is read
      case Character.SURROGATE, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR ->
          out.append(STAND_IN);
      default -> {
        if ("/\\:*?\"<>|".indexOf(c) >= 0) {
          out.append(STAND_IN);
        } else {
          out.appendCodePoint(c);
        }
      }
    }
  }

  /**
   * A whole part of a path, its placeholders filled: no dots or spaces at its ends, which hide it
   * or which a system drops, not the name of a device, not too long.
   */
  static String part(String text) {
    String name = value(text);
    int dot = name.lastIndexOf('.');
    boolean ending = dot > 0 && name.length() - dot <= MAX_ENDING;
    String stem = ending ? name.substring(0, dot) : name;
    String rest = ending ? name.substring(dot) : "";
    return unreserved(shorten(stem, MAX_BYTES - 1 - bytes(rest))) + rest;
  }

  private static String trim(String name) {
    int from = 0;
    int to = name.length();
    while (from < to && dotOrSpace(name.charAt(from))) {
      from++;
    }
    while (to > from && dotOrSpace(name.charAt(to - 1))) {
      to--;
    }
    return from == to ? STAND_IN : name.substring(from, to);
  }

  private static boolean dotOrSpace(char c) {
    return c == '.' || Character.isWhitespace(c);
  }

  /** A device's name is one up to its first dot: {@code con.a.tif} is the console. */
  private static String unreserved(String stem) {
    int dot = stem.indexOf('.');
    String first = dot < 0 ? stem : stem.substring(0, dot);
    String lower = first.strip().toLowerCase(Locale.ROOT);
    return RESERVED.matcher(lower).matches() ? first + "_" + stem.substring(first.length()) : stem;
  }

  private static String shorten(String stem, int most) {
    int end = Math.min(stem.length(), most); // a char takes a byte or more
    while (bytes(stem.substring(0, end)) > most || splitsPair(stem, end)) {
      end--;
    }
    return end == stem.length() ? stem : trim(stem.substring(0, end));
  }

  private static boolean splitsPair(String text, int at) {
    return at > 0 && at < text.length() && Character.isLowSurrogate(text.charAt(at));
  }

  private static int bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8).length;
  }
}
