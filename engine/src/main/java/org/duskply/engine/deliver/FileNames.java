package org.duskply.engine.deliver;

import java.time.LocalDateTime;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * File names with placeholders: {@code out/<title>-<width>.jpg}. The placeholders are {@code
 * <recipe> <title> <alternate> <deliverable> <width> <height>} and {@code <shot:yyyy-MM-dd>}, the
 * base frame's capture time, whose letters {@code yyyy MM dd HH mm ss} may stand in any order with
 * {@code - _ .} or a space between. There is no clock. Values come from strangers: {@link SafeName}
 * makes them fit to be part of a name, so that a value never opens a folder.
 */
public final class FileNames {
  /** Longest template, in characters. */
  public static final int MAX_TEMPLATE = 1_000;

  /** Most folders and the file in one name. */
  public static final int MAX_DEPTH = 16;

  private static final Pattern PLACEHOLDER = Pattern.compile("<([^<>]*)>");
  private static final Pattern SHOT = Pattern.compile("shot:((?:yyyy|MM|dd|HH|mm|ss|[-_. ])+)");
  private static final Pattern DATE_PART = Pattern.compile("yyyy|MM|dd|HH|mm|ss");
  private static final List<String> PLAIN =
      List.of("recipe", "title", "alternate", "deliverable", "width", "height");

  private FileNames() {}

  /**
   * What is wrong with a template, as one sentence, or {@code null} if nothing is.
   *
   * @param template as the recipe has it
   */
  public static @Nullable String problem(String template) {
    if (template.length() > MAX_TEMPLATE) {
      return "a file name has at most "
          + MAX_TEMPLATE
          + " characters; this one has "
          + template.length()
          + ".";
    }
    String rest = PLACEHOLDER.matcher(template).replaceAll("x");
    if (rest.indexOf('<') >= 0 || rest.indexOf('>') >= 0) {
      return "\"" + template + "\" has a < or > that belongs to no placeholder.";
    }
    Matcher m = PLACEHOLDER.matcher(template);
    while (m.find()) {
      if (!known(m.group(1))) {
        return m.group()
            + " is no placeholder; there are <recipe>, <title>, <alternate>, <deliverable>,"
            + " <width>, <height> and <shot:yyyy-MM-dd>.";
      }
    }
    return shapeProblem(template, rest);
  }

  /** Whether the template asks for the base frame's capture time. */
  public static boolean asksForShot(String template) {
    return template.contains("<shot:");
  }

  /**
   * The file's name.
   *
   * @param template without {@link #problem}
   * @param values what its placeholders stand for
   * @return relative, {@code /} between folders, every part fit for the file systems of all three
   *     desktop systems
   * @throws DeliverException if the template is wrong, or asks for a capture time that is not known
   */
  public static String resolve(String template, NameValues values) {
    String wrong = problem(template);
    if (wrong != null) {
      throw new DeliverException(wrong);
    }
    String[] parts = template.split("/", -1);
    for (int i = 0; i < parts.length; i++) {
      parts[i] = SafeName.part(fill(parts[i], values));
    }
    return String.join("/", parts);
  }

  private static boolean known(String placeholder) {
    return PLAIN.contains(placeholder) || SHOT.matcher(placeholder).matches();
  }

  private static @Nullable String shapeProblem(String template, String rest) {
    String[] parts = rest.split("/", -1);
    if (parts.length > MAX_DEPTH) {
      return "a file can lie at most " + (MAX_DEPTH - 1) + " folders deep.";
    }
    if (rest.indexOf('\\') >= 0 || rest.indexOf(':') >= 0) {
      return "\""
          + template
          + "\" needs / between folders, and can have neither \\ nor : in a name.";
    }
    for (String part : parts) {
      if (part.isBlank() || part.startsWith(".")) {
        return "\""
            + template
            + "\" must be a name inside the output folder, without a / at its ends, and no part of it may begin with a dot.";
      }
    }
    return null;
  }

  private static String fill(String part, NameValues values) {
    return PLACEHOLDER
        .matcher(part)
        .replaceAll(m -> Matcher.quoteReplacement(SafeName.value(value(m.group(1), values))));
  }

  private static String value(String placeholder, NameValues values) {
    return switch (placeholder) {
      case "recipe" -> values.recipe();
      case "title" -> values.title();
      case "alternate" -> values.alternate();
      case "deliverable" -> values.deliverable();
      case "width" -> Integer.toString(values.width());
      case "height" -> Integer.toString(values.height());
      default -> shot(placeholder.substring("shot:".length()), values.shot());
    };
  }

  private static String shot(String pattern, @Nullable LocalDateTime shot) {
    if (shot == null) {
      throw new DeliverException(
          "The file name asks for <shot:"
              + pattern
              + ">, but the base frame does not say when it was taken; leave it out or use a base"
              + " frame with its camera's record.");
    }
    return DATE_PART.matcher(pattern).replaceAll(m -> datePart(m.group(), shot));
  }

  private static String datePart(String letters, LocalDateTime t) {
    return switch (letters) {
      case "yyyy" -> digits(t.getYear(), 4);
      case "MM" -> digits(t.getMonthValue(), 2);
      case "dd" -> digits(t.getDayOfMonth(), 2);
      case "HH" -> digits(t.getHour(), 2);
      case "mm" -> digits(t.getMinute(), 2);
      default -> digits(t.getSecond(), 2);
    };
  }

  private static String digits(int number, int count) {
    String s = Integer.toString(number);
    return "0".repeat(Math.max(0, count - s.length())) + s;
  }
}
