package org.duskply.recipe;

/**
 * Where the parts of a recipe stand in its text. A part is named by its path: keys joined by a
 * slash, members of a list as {@code #1}, {@code #2}: {@code steps/#4/mask/polygon}.
 */
public interface Places {
  /** Those of a recipe built by a program: nowhere. */
  Places NONE = new NoPlaces();

  /** The spot of the part at {@code path}, or of the nearest part around it that has one. */
  Place at(String path);

  /**
   * The line of text at a spot with a caret below the column, two lines; empty for a recipe built
   * by a program.
   */
  String snippet(Place place);
}
