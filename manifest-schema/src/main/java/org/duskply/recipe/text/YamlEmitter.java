package org.duskply.recipe.text;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Writes plain values as YAML a person would write: one step, frame or mask a line in brackets
 * while it fits, indented blocks where it does not, quotes only where they are needed.
 */
public final class YamlEmitter {
  private static final int WIDTH = 100;
  private static final Pattern BARE = Pattern.compile("[A-Za-z][A-Za-z0-9_./<>-]*");
  private static final Set<String> MEANINGFUL =
      Set.of("true", "false", "null", "yes", "no", "on", "off", "y", "n");

  private final StringBuilder out = new StringBuilder();

  private YamlEmitter() {}

  /** The text of a mapping, with a line end. */
  public static String text(Map<String, ?> mapping) {
    YamlEmitter emitter = new YamlEmitter();
    for (Map.Entry<String, ?> entry : mapping.entrySet()) {
      emitter.out.append(scalar(entry.getKey())).append(':');
      emitter.outermost(entry.getValue());
    }
    return emitter.out.toString();
  }

  private void outermost(@Nullable Object value) {
    boolean numbers =
        value instanceof List<?> list && list.stream().allMatch(Number.class::isInstance);
    if (numbers || isEmpty(value) || !isContainer(value)) {
      below(value, 0);
    } else {
      block(value, 0);
    }
  }

  /** What follows a key's colon: on the same line if it fits, else a block. */
  private void below(@Nullable Object value, int indent) {
    if (value instanceof String text && asLines(text)) {
      lines(text, indent + 2);
      return;
    }
    String flow = flow(value);
    int column = out.length() - out.lastIndexOf("\n");
    boolean fits = column + flow.length() <= WIDTH && !flow.contains("\\n") && !isSeries(value);
    if (fits || !isContainer(value) || isEmpty(value)) {
      out.append(' ').append(flow).append('\n');
    } else {
      block(value, indent);
    }
  }

  /** A container on lines of its own, below a key at {@code indent}. */
  private void block(@Nullable Object value, int indent) {
    out.append('\n');
    if (value instanceof Map<?, ?> map) {
      entries(map, indent + 2, true);
    } else if (value instanceof List<?> list) {
      for (Object member : list) {
        out.append(" ".repeat(indent + 2)).append('-');
        member(member, indent + 2);
      }
    }
  }

  private void member(@Nullable Object member, int indent) {
    int start = out.length();
    below(member, indent);
    boolean broken = out.charAt(start) == '\n';
    if (broken && member instanceof Map<?, ?> map) {
      out.setLength(start);
      out.append(' ');
      entries(map, indent + 2, false);
    }
  }

  private void entries(Map<?, ?> map, int indent, boolean indentFirst) {
    boolean indented = indentFirst;
    for (Map.Entry<?, ?> entry : map.entrySet()) {
      out.append(indented ? " ".repeat(indent) : "");
      out.append(scalar((String) entry.getKey())).append(':');
      below(entry.getValue(), indent);
      indented = true;
    }
  }

  private static boolean isContainer(@Nullable Object value) {
    return value instanceof Map || value instanceof List;
  }

  /** A list of several things of several keys each reads better line by line. */
  private static boolean isSeries(@Nullable Object value) {
    return value instanceof List<?> list
        && list.size() > 1
        && list.stream().anyMatch(member -> member instanceof Map<?, ?> map && map.size() > 1);
  }

  private static boolean isEmpty(@Nullable Object value) {
    return (value instanceof Map<?, ?> map && map.isEmpty())
        || (value instanceof List<?> list && list.isEmpty());
  }

  private static String flow(@Nullable Object value) {
    if (value instanceof Map<?, ?> map) {
      return map.isEmpty()
          ? "{}"
          : map.entrySet().stream()
              .map(e -> scalar(e.getKey()) + ": " + flow(e.getValue()))
              .collect(Collectors.joining(", ", "{ ", " }"));
    }
    if (value instanceof List<?> list) {
      return list.stream().map(YamlEmitter::flow).collect(Collectors.joining(", ", "[", "]"));
    }
    return scalar(value);
  }

  private static String scalar(@Nullable Object value) {
    if (value instanceof Double number) {
      return Es6Number.text(number);
    }
    if (value instanceof String text) {
      return needsNoQuotes(text) ? text : quoted(text);
    }
    return String.valueOf(value);
  }

  private static boolean needsNoQuotes(String text) {
    return BARE.matcher(text).matches()
        && !MEANINGFUL.contains(text.toLowerCase(java.util.Locale.ROOT));
  }

  private static String quoted(String text) {
    StringBuilder json = new StringBuilder();
    CanonicalJson.string(text, json);
    StringBuilder safe = new StringBuilder();
    for (int i = 0; i < json.length(); i++) {
      char c = json.charAt(i);
      if (hidden(c)) {
        CanonicalJson.unicode(c, safe);
      } else {
        safe.append(c);
      }
    }
    return safe.toString();
  }

  /** Characters that cannot be seen, or that some readers take for line ends. */
  private static boolean hidden(char c) {
    return (c >= 0x7f && c <= 0xa0)
        || c == 0x2028
        || c == 0x2029
        || c == 0xfeff
        || c == 0xfffe
        || c == 0xffff;
  }

  /** Whether a text of several lines can stand as such. */
  private static boolean asLines(String text) {
    return text.indexOf('\n') > 0
        && !text.endsWith("\n\n")
        && text.chars().noneMatch(c -> (c < 0x20 && c != '\n') || hidden((char) c))
        && text.lines().noneMatch(line -> line.startsWith(" ") || line.endsWith(" "));
  }

  private void lines(String text, int indent) {
    out.append(text.endsWith("\n") ? " |\n" : " |-\n");
    text.lines()
        .forEach(
            line -> out.append(line.isEmpty() ? "" : " ".repeat(indent)).append(line).append('\n'));
  }
}
