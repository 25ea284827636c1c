package org.duskply.recipe.text;

import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;

/** Says where and why a text is not JSON. */
final class JsonSlips {
  private JsonSlips() {}

  static void report(Source source, JacksonException e, Problems problems) {
    TokenStreamLocation location = e.getLocation();
    Columns columns = new Columns(source, false);
    Spot spot = location == null ? Spot.START : columns.spot(location);
    int at = source.start(spot.line()) + utf16(source.line(spot.line()), spot.column() - 1);
    String text = source.text();
    if (text.substring(Math.min(at, text.length())).isBlank() && !text.isBlank()) {
      int last = text.stripTrailing().length();
      problems.add(
          source.spot(last),
          "",
          "the text ends too early: a closing bracket or quote is missing",
          "the end of the text",
          "a closing bracket or quote");
      return;
    }
    problems.add(spot, "", sentence(text, at), "invalid JSON", "valid JSON");
  }

  private static String sentence(String text, int at) {
    char here = at < text.length() ? text.charAt(at) : ' ';
    int before = at - 1;
    while (before >= 0 && Character.isWhitespace(text.charAt(before))) {
      before--;
    }
    char previous = before >= 0 ? text.charAt(before) : ' ';
    if ((here == '}' || here == ']') && previous == ',') {
      return "there is a comma before this closing bracket; delete the comma";
    }
    if (here == '/' || here == '#') {
      return "JSON has no comments; delete it, or write the recipe as YAML, which has (# …)";
    }
    if (Character.isDigit(previous) || Character.isDigit(here)) {
      return "this number is not written as JSON writes numbers: no leading zero or plus sign,"
          + " a digit on both sides of the point";
    }
    if (Character.isLetter(here) || here == '\'') {
      return "JSON keys and texts stand in double quotes: \"base\": \"dusk\"";
    }
    return "the JSON cannot be read from here: look for a missing comma, colon, quote or bracket"
        + " just before";
  }

  private static int utf16(String line, int codePoints) {
    return line.offsetByCodePoints(0, Math.min(codePoints, line.codePointCount(0, line.length())));
  }
}
