package org.duskply.recipe.text;

import java.util.Locale;
import org.duskply.recipe.Limits;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;

/**
 * Reads a text into a {@link Tree} and gathers all that keeps it from being one. Where a well-known
 * slip stops the parser (a colon in bare text, a tab), the slip is reported, the character is
 * replaced by a harmless one, and reading starts over, so that what follows is read too.
 */
public final class TextReader {
  private static final int MOST_MENDS = 20;
  private static final int LONGEST_MENDED = 1 << 18;

  private final Source source;
  private final Problems problems;
  private final Problems slips;
  private final boolean yaml;

  private TextReader(Source source, Problems problems, boolean yaml) {
    this.source = source;
    this.problems = problems;
    this.slips = new Problems(source);
    this.yaml = yaml;
  }

  /**
   * Reads the text.
   *
   * @return its root; null when no tree can be made of it, which has then been reported
   */
  public static @Nullable Tree read(Source source, Problems problems) {
    boolean yaml = isYaml(source);
    if (hasControlCharacters(source, problems)
        || (yaml && (hasDirective(source, problems) || hasLongLine(source, problems)))) {
      return null;
    }
    return new TextReader(source, problems, yaml).read();
  }

  private @Nullable Tree read() {
    String text = source.text();
    for (int mends = 0; ; mends++) {
      Problems found = new Problems(source);
      try {
        Tree root = TreeReader.read(source, text, yaml, found);
        problems.addAll(slips);
        problems.addAll(found);
        return root;
      } catch (IndexOutOfBoundsException | IllegalStateException | NumberFormatException e) {
        // The parser met something that its authors did not think of; a stranger's file must not
        // bring the caller down.
        problems.addAll(slips);
        problems.add(
            Spot.START,
            "",
            "this file cannot be read as " + (yaml ? "YAML" : "JSON"),
            "an unreadable file",
            "a recipe");
        return null;
      } catch (JacksonException e) {
        boolean mendable = mends < MOST_MENDS && text.length() <= LONGEST_MENDED;
        String mended = slip(e, text, found);
        if (mended == null || !mendable) {
          problems.addAll(slips);
          problems.addAll(found);
          return null;
        }
        text = mended;
      }
    }
  }

  /** Reports the slip; the text without it, null when reading must end here. */
  private @Nullable String slip(JacksonException e, String text, Problems found) {
    if (!yaml) {
      JsonSlips.report(source, e, found);
      return null;
    }
    return new YamlSlips(source, text, slips).report(e);
  }

  /** By the file's ending; without one, a text that begins like a JSON object is JSON. */
  private static boolean isYaml(Source source) {
    String name = source.name().toLowerCase(Locale.ROOT);
    if (name.endsWith(".json")) {
      return false;
    }
    if (name.endsWith(".yaml") || name.endsWith(".yml")) {
      return true;
    }
    String text = source.text();
    int brace = skipSpace(text, 0);
    if (brace >= text.length() || text.charAt(brace) != '{') {
      return true;
    }
    int next = skipSpace(text, brace + 1);
    return next >= text.length() || text.charAt(next) != '"';
  }

  private static int skipSpace(String text, int from) {
    int i = from;
    while (i < text.length() && " \t\n".indexOf(text.charAt(i)) >= 0) {
      i++;
    }
    return i;
  }

  private static boolean hasControlCharacters(Source source, Problems problems) {
    String text = source.text();
    for (int i = 0; i < text.length(); i++) {
      if (unprintable(text.charAt(i))) {
        problems.add(
            source.spot(i),
            "",
            String.format(
                Locale.ROOT,
                "this file holds a character that is no text (U+%04X); is it a recipe?"
                    + " Save it as plain text, UTF-8",
                (int) text.charAt(i)),
            String.format(Locale.ROOT, "U+%04X", (int) text.charAt(i)),
            "plain text");
        return true;
      }
    }
    return false;
  }

  /** Directives are refused before the parser sees them: it works on a long one for minutes. */
  private static boolean hasDirective(Source source, Problems problems) {
    String text = source.text();
    int at = text.startsWith("%") ? 0 : text.indexOf("\n%") + 1;
    if (at == 0 && !text.startsWith("%")) {
      return false;
    }
    problems.add(
        source.spot(at),
        "",
        "lines that begin with % are not used in recipes; delete it, or indent it if it belongs to"
            + " a text",
        "%",
        "no directive");
    return true;
  }

  private static boolean hasLongLine(Source source, Problems problems) {
    for (int line = 1; line <= source.lines(); line++) {
      int end = line < source.lines() ? source.start(line + 1) : source.text().length();
      int length = end - source.start(line);
      if (length > Limits.LINE) {
        problems.add(
            new Spot(line, 1),
            "",
            "this line has " + length + " characters; the limit of a line is " + Limits.LINE,
            length + " characters",
            "at most " + Limits.LINE);
        return true;
      }
    }
    return false;
  }

  private static boolean unprintable(char c) {
    boolean control = (c < 0x20 && c != '\n' && c != '\t') || (c >= 0x7f && c < 0xa0 && c != 0x85);
    return control || c == 0xfffe || c == 0xffff;
  }
}
