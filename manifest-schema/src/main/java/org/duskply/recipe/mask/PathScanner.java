package org.duskply.recipe.mask;

/**
 * The tokens of path data: commands, numbers, flags and what parts them. A token ends where the
 * next character cannot continue it, so {@code 0.6.5} is two numbers and {@code 100-200} as well.
 * Takes {@code 5.} as a number, which SVG 1.1 allowed and SVG 2 no longer does.
 */
final class PathScanner {
  private final String text;
  private int at;

  PathScanner(String text) {
    this.text = text;
  }

  /** The index of the next character. */
  int at() {
    return at;
  }

  boolean ended() {
    return at == text.length();
  }

  void skipSpace() {
    while (at < text.length() && isSpace(text.charAt(at))) {
      at++;
    }
  }

  /** Skips space and at most one comma; whether there was a comma. */
  boolean skipSeparator() {
    skipSpace();
    boolean comma = at < text.length() && text.charAt(at) == ',';
    if (comma) {
      at++;
      skipSpace();
    }
    return comma;
  }

  /** Whether a number can start here. */
  boolean startsNumber() {
    return !ended() && (isDigit(at) || "+-.".indexOf(text.charAt(at)) >= 0);
  }

  /** The next character, left where it is; there must be one. */
  char peek() {
    return text.charAt(at);
  }

  /** The next character, taken. */
  char take() {
    return text.charAt(at++);
  }

  /** A number; {@code due} says in words what is expected here. */
  double number(String due) {
    int start = at;
    if (!ended() && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
      at++;
    }
    int digits = skipDigits();
    if (!ended() && text.charAt(at) == '.') {
      at++;
      digits += skipDigits();
    }
    if (digits == 0) {
      at = start;
      throw missing(due);
    }
    skipExponent();
    double value = Double.parseDouble(text.substring(start, at));
    if (Math.abs(value) > PathData.FARTHEST) {
      throw new PathSyntaxException(start, PathData.TOO_FAR);
    }
    return value;
  }

  /** A flag of an arc: one character, 0 or 1. */
  boolean flag(String due) {
    if (ended() || (text.charAt(at) != '0' && text.charAt(at) != '1')) {
      throw missing(due + " (0 or 1)");
    }
    return take() == '1';
  }

  /** What to throw where {@code due} is expected and something else stands. */
  PathSyntaxException missing(String due) {
    return new PathSyntaxException(at, "Expected " + due + ", found " + found() + ".");
  }

  private String found() {
    if (ended()) {
      return "the end of the path";
    }
    int c = text.codePointAt(at);
    boolean readable = c > ' ' && Character.isDefined(c) && !Character.isISOControl(c);
    return readable ? "'" + Character.toString(c) + "'" : String.format("U+%04X", c);
  }

  private void skipExponent() {
    int start = at;
    if (ended() || (text.charAt(at) != 'e' && text.charAt(at) != 'E')) {
      return;
    }
    at++;
    if (!ended() && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
      at++;
    }
    if (skipDigits() == 0) {
      at = start;
    }
  }

  private int skipDigits() {
    int start = at;
    while (at < text.length() && isDigit(at)) {
      at++;
    }
    return at - start;
  }

  private boolean isDigit(int i) {
    return text.charAt(i) >= '0' && text.charAt(i) <= '9';
  }

  private static boolean isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\f' || c == '\r';
  }
}
