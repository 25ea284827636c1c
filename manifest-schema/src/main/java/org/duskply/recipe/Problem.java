package org.duskply.recipe;

import org.jspecify.annotations.Nullable;

/**
 * Something wrong in a recipe, or worth a look.
 *
 * @param severity whether the recipe can be used all the same
 * @param place where it stands
 * @param path the part of the recipe, as in {@link Places}; empty for the file as a whole
 * @param sentence what is wrong and what to write instead, for a photographer
 * @param found what stands there, short
 * @param expected what would be right, short
 * @param nearest the name that exists and comes nearest to the one found; null when none does
 * @param snippet the line of text with a caret, two lines; empty when there is no text
 */
public record Problem(
    Severity severity,
    Place place,
    String path,
    String sentence,
    String found,
    String expected,
    @Nullable String nearest,
    String snippet) {

  /** How bad it is. */
  public enum Severity {
    /** The recipe cannot be used. */
    PROBLEM,
    /** The recipe can be used; perhaps it does not say what was meant. */
    NOTICE
  }

  /** Whether it is only worth a look. */
  public boolean isNotice() {
    return severity == Severity.NOTICE;
  }

  /** Place, sentence, path and snippet as a terminal shows them, without a line end. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder().append(place).append(": ");
    if (isNotice()) {
      text.append("notice: ");
    }
    text.append(sentence);
    if (!path.isEmpty()) {
      text.append("\n  in ").append(path);
    }
    if (!snippet.isEmpty()) {
      text.append("\n").append(snippet);
    }
    return text.toString();
  }
}
