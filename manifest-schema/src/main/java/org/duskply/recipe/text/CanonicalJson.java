package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * JSON in the one form that RFC 8785 leaves: no spaces, keys by their UTF-16 units, numbers as
 * ECMAScript writes them, the fewest escapes.
 */
public final class CanonicalJson {
  private CanonicalJson() {}

  /**
   * The text of a value made of maps with text keys, lists, texts, numbers, truth values and null.
   *
   * @throws IllegalArgumentException if a number is not finite or a text holds half a character
   */
  public static String text(@Nullable Object value) {
    StringBuilder out = new StringBuilder();
    write(value, out);
    return out.toString();
  }

  private static void write(@Nullable Object value, StringBuilder out) {
    if (value instanceof Map<?, ?> map) {
      object(map, out);
    } else if (value instanceof List<?> list) {
      array(list, out);
    } else if (value instanceof String text) {
      string(text, out);
    } else if (value instanceof Number number) {
      out.append(Es6Number.text(number.doubleValue()));
    } else if (value == null || value instanceof Boolean) {
      out.append(value);
    } else {
      throw new IllegalArgumentException("no JSON for a " + value.getClass().getSimpleName());
    }
  }

  private static void object(Map<?, ?> map, StringBuilder out) {
    Map<String, Object> sorted = new TreeMap<>();
    map.forEach((key, value) -> sorted.put((String) key, value));
    char before = '{';
    for (Map.Entry<String, Object> entry : sorted.entrySet()) {
      out.append(before);
      string(entry.getKey(), out);
      out.append(':');
      write(entry.getValue(), out);
      before = ',';
    }
    out.append(before == '{' ? "{}" : "}");
  }

  private static void array(List<?> list, StringBuilder out) {
    out.append('[');
    List<?> members = new ArrayList<>(list);
    for (int i = 0; i < members.size(); i++) {
      if (i > 0) {
        out.append(',');
      }
      write(members.get(i), out);
    }
    out.append(']');
  }

  static void string(String text, StringBuilder out) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isSurrogate(c)) {
        if (!Character.isHighSurrogate(c)
            || i + 1 == text.length()
            || !Character.isLowSurrogate(text.charAt(i + 1))) {
          throw new IllegalArgumentException("a text holds half of a character");
        }
        out.append(c).append(text.charAt(++i));
      } else {
        character(c, out);
      }
    }
    out.append('"');
  }

  private static void character(char c, StringBuilder out) {
    int escape = "\b\t\n\f\r\"\\".indexOf(c);
    if (escape >= 0) {
      out.append('\\').append("btnfr\"\\".charAt(escape));
    } else if (c < 0x20) {
      unicode(c, out);
    } else {
      out.append(c);
    }
  }

  /** The escape of a UTF-16 unit, in lower case. */
  static void unicode(char c, StringBuilder out) {
    out.append("\\u");
    for (int shift = 12; shift >= 0; shift -= 4) {
      out.append(Character.forDigit((c >> shift) & 0xf, 16));
    }
  }
}
