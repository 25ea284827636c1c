package org.duskply.recipe.text;

import java.io.Reader;

/**
 * Reads a text in pieces that never end in the middle of a character: the YAML parser loses its way
 * (and throws an IndexOutOfBoundsException) where its buffer ends with half of one.
 */
final class WholeCharacters extends Reader {
  private final String text;
  private int at;

  WholeCharacters(String text) {
    this.text = text;
  }

  @Override
  public int read(char[] buffer, int from, int length) {
    if (at == text.length()) {
      return -1;
    }
    int count = Math.min(length, text.length() - at);
    if (count > 1 && Character.isHighSurrogate(text.charAt(at + count - 1))) {
      count--;
    }
    text.getChars(at, at + count, buffer, from);
    at += count;
    return count;
  }

  @Override
  public void close() {}
}
