package org.duskply.recipe.text;

import tools.jackson.core.TokenStreamLocation;

/**
 * Token locations as lines and columns of characters. The YAML parser counts code points, the JSON
 * parser UTF-16 units. Tokens come in the order of the text, so the place of the last one is kept
 * and each line is walked once.
 */
final class Columns {
  private final Source source;
  private final boolean codePoints;
  private int line;
  private int column = 1;
  private int index;

  Columns(Source source, boolean codePoints) {
    this.source = source;
    this.codePoints = codePoints;
  }

  /** Line and column of a location. */
  Spot spot(TokenStreamLocation location) {
    walkTo(location);
    return new Spot(line, column);
  }

  /** The character at a location; −1 at the end of the text. */
  int characterAtToken(TokenStreamLocation location) {
    walkTo(location);
    return index < source.text().length() ? source.text().codePointAt(index) : -1;
  }

  private void walkTo(TokenStreamLocation location) {
    int target = Math.max(1, location.getColumnNr());
    int targetLine = Math.max(1, location.getLineNr());
    if (targetLine != line || position() > target) {
      line = targetLine;
      index = source.start(line);
      column = 1;
    }
    String text = source.text();
    while (position() < target && index < text.length()) {
      index += Character.charCount(text.codePointAt(index));
      column++;
    }
  }

  private int position() {
    return codePoints ? column : index - source.start(line) + 1;
  }
}
