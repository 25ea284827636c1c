package org.duskply.recipe;

/**
 * A spot in a recipe's text.
 *
 * @param file the name of the file as the reader was given it
 * @param line counted from 1
 * @param column counted from 1, in characters as an editor counts them
 */
public record Place(String file, int line, int column) {
  @Override
  public String toString() {
    return file + ":" + line + ":" + column;
  }
}
