package org.duskply.engine.svg;

/** Texts of a drawing as they may stand in a sentence. */
final class SvgWords {
  private static final int LONGEST = 60;

  private SvgWords() {}

  /** The text on one line, without control characters, shortened. */
  static String quoted(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .limit(LONGEST)
        .map(c -> Character.isISOControl(c) || Character.isWhitespace(c) ? ' ' : c)
        .forEach(shown::appendCodePoint);
    return shown.length() < text.length() ? shown + "…" : shown.toString();
  }
}
