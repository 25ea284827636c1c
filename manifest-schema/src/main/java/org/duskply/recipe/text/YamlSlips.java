package org.duskply.recipe.text;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;

/**
 * Says where and why a text is not YAML, in the words of someone who never heard of YAML. Which
 * slip it is, is told by the characters at the place where the parser stopped.
 */
final class YamlSlips {
  private static final Pattern KEY_AND_TEXT =
      Pattern.compile("[\\s-]*(?:[{,]\\s*)?([^\\s:{}\\[\\],]+):\\s+(.+)");
  private static final Pattern NO_SPACE = Pattern.compile("[\\s-]*([A-Za-z][\\w-]*):([^\\s/].*)");
  private static final Pattern INDENTED_BY_TAB = Pattern.compile("(?m)^ *\\t[ \\t]*");

  private static final int LONGEST_LINE = 2_000;

  private final Source source;
  private final String text;
  private final Problems problems;

  /**
   * Prepares.
   *
   * @param text the source's text with the slips so far replaced
   */
  YamlSlips(Source source, String text, Problems problems) {
    this.source = source;
    this.text = text;
    this.problems = problems;
  }

  /** Reports the slip; the text with it replaced one character for one, or null. */
  @Nullable String report(JacksonException e) {
    int at = index(e);
    Spot spot = source.spot(at);
    String message = e.getOriginalMessage() == null ? "" : e.getOriginalMessage();
    int here = at < text.length() ? text.codePointAt(at) : -1;
    if (here == '\t') {
      return tab(at, spot);
    }
    if (message.contains("cannot start any token") && here > 0) {
      return firstCharacter(at, spot, Character.toString(here));
    }
    if (message.startsWith("mapping values are not allowed")) {
      return colon(at, spot);
    }
    if (problems.any()) {
      return null; // Perhaps only a consequence of what was mended above.
    }
    Spot begin = message.contains("expected ':'") ? new Spot(contextLine(e, spot), 1) : spot;
    problems.add(begin, "", sentence(message, begin, e), "unreadable YAML", "readable YAML");
    return null;
  }

  private @Nullable String tab(int at, Spot spot) {
    String before = text.substring(source.start(spot.line()), at);
    if (before.isBlank()) {
      problems.add(
          spot,
          "",
          "this line is indented with a tab; indent with spaces, here and wherever a line begins"
              + " with a tab",
          "a tab",
          "spaces");
      Matcher matcher = INDENTED_BY_TAB.matcher(text);
      return matcher.replaceAll(match -> match.group().replace('\t', ' '));
    }
    problems.add(spot, "", "there is a tab here; use a space", "a tab", "a space");
    return replaced(at, ' ');
  }

  private @Nullable String firstCharacter(int at, Spot spot, String character) {
    problems.add(
        spot,
        "",
        "a text cannot begin with " + character + " unless it stands in quotes; write \"…\"",
        character,
        "a text in quotes");
    return character.length() == 1 ? replaced(at, 'x') : null;
  }

  private @Nullable String colon(int at, Spot spot) {
    String line = patternLine(spot);
    Matcher matcher = KEY_AND_TEXT.matcher(line);
    boolean within = matcher.matches() && source.start(spot.line()) + matcher.start(2) < at;
    if (!within) {
      problems.add(
          spot,
          "",
          "a key begins here, but the line above already gave a value; indent this line like the"
              + " keys that it belongs to",
          "a key",
          "the same indentation as its neighbours");
      return null;
    }
    String whole = matcher.group(2).strip();
    problems.add(
        spot,
        matcher.group(1),
        "a text with a colon and a space in it needs quotes: "
            + Words.shortened(matcher.group(1) + ": \"" + whole.replace("\"", "\\\"") + "\""),
        whole,
        "\"" + whole + "\"");
    int end = source.start(spot.line()) + source.line(spot.line()).length();
    boolean brackets = line.indexOf('{') >= 0 || line.indexOf('[') >= 0;
    String rest = text.substring(at, end);
    return text.substring(0, at)
        + (brackets ? ";" + rest.substring(1) : rest.replace(": ", "; "))
        + text.substring(end);
  }

  private String sentence(String message, Spot spot, JacksonException e) {
    if (message.contains("scanning a quoted scalar")) {
      return "the quote that opens in line "
          + contextLine(e, spot)
          + " is never closed; close it, or double a quote that belongs to the text";
    }
    if (message.contains("while parsing a flow")) {
      return "a comma or a closing bracket is missing before this; the bracket opened in line "
          + contextLine(e, spot);
    }
    if (message.contains("sequence entries are not allowed")) {
      return "a list that is written with - begins on a line of its own, below its key";
    }
    if (message.contains("Expected a property name")) {
      return "a key must be one plain word; brackets, aliases and lists cannot be keys";
    }
    Matcher noSpace = NO_SPACE.matcher(patternLine(spot));
    if (noSpace.matches() || message.contains("expected ':'")) {
      return noSpace.matches()
          ? "a space is missing after the colon of " + noSpace.group(1)
          : "this line has no key and value; write key: value";
    }
    if (message.contains("expected <block end>")) {
      return message.contains("<scalar>")
          ? "something follows here after a text in quotes; put quotes around all of it, and"
              + " double a quote that belongs to the text"
          : "the indentation of this line fits none of the lines above; line it up with the keys"
              + " that it belongs to";
    }
    return "the text cannot be read from here; look for a missing quote, bracket, colon or"
        + " space just before";
  }

  /** A line for the patterns above, which take the square of its length in the worst case. */
  private String patternLine(Spot spot) {
    String line = source.line(spot.line());
    return line.length() <= LONGEST_LINE ? line : "";
  }

  private int contextLine(JacksonException e, Spot spot) {
    if (e.getCause() instanceof MarkedYamlEngineException marked) {
      return marked.getContextMark().map(mark -> mark.getLine() + 1).orElse(spot.line());
    }
    return spot.line();
  }

  private int index(JacksonException e) {
    if (e.getCause() instanceof MarkedYamlEngineException marked) {
      Mark mark = marked.getProblemMark().or(marked::getContextMark).orElse(null);
      if (mark != null) {
        return index(mark.getLine() + 1, mark.getColumn());
      }
    }
    TokenStreamLocation location = e.getLocation();
    return location == null
        ? 0
        : index(Math.max(1, location.getLineNr()), Math.max(0, location.getColumnNr() - 1));
  }

  private int index(int line, int column) {
    String content = source.line(line);
    int most = content.codePointCount(0, content.length());
    return source.start(line) + content.offsetByCodePoints(0, Math.min(column, most));
  }

  private String replaced(int at, char by) {
    return text.substring(0, at) + by + text.substring(at + 1);
  }
}
