package org.duskply.recipe.text;

import java.util.Iterator;
import java.util.List;
import java.util.Map;

/** JSON for people to read: keys in the order of the maps, short values on one line. */
public final class PrettyJson {
  private static final int WIDTH = 100;

  private PrettyJson() {}

  /** The text of a value, with a line end. */
  public static String text(Object value) {
    StringBuilder out = new StringBuilder();
    write(value, 0, out);
    return out.append('\n').toString();
  }

  private static void write(Object value, int indent, StringBuilder out) {
    int column = out.length() - out.lastIndexOf("\n");
    String line = line(value);
    if (column + line.length() <= WIDTH || !(value instanceof Map || value instanceof List)) {
      out.append(line);
    } else if (value instanceof Map<?, ?> map) {
      object(map, indent + 2, out);
    } else {
      array((List<?>) value, indent + 2, out);
    }
  }

  private static void object(Map<?, ?> map, int indent, StringBuilder out) {
    out.append('{');
    Iterator<? extends Map.Entry<?, ?>> entries = map.entrySet().iterator();
    while (entries.hasNext()) {
      Map.Entry<?, ?> entry = entries.next();
      out.append('\n').append(" ".repeat(indent));
      CanonicalJson.string((String) entry.getKey(), out);
      out.append(": ");
      write(entry.getValue(), indent, out);
      out.append(entries.hasNext() ? "," : "\n" + " ".repeat(indent - 2) + "}");
    }
  }

  private static void array(List<?> list, int indent, StringBuilder out) {
    out.append('[');
    for (int i = 0; i < list.size(); i++) {
      out.append('\n').append(" ".repeat(indent));
      write(list.get(i), indent, out);
      out.append(i + 1 < list.size() ? "," : "\n" + " ".repeat(indent - 2) + "]");
    }
  }

  private static String line(Object value) {
    StringBuilder out = new StringBuilder();
    if (value instanceof Map<?, ?> map) {
      String before = "{ ";
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        out.append(before);
        CanonicalJson.string((String) entry.getKey(), out);
        out.append(": ").append(line(entry.getValue()));
        before = ", ";
      }
      return map.isEmpty() ? "{}" : out.append(" }").toString();
    }
    if (value instanceof List<?> list) {
      String before = "[";
      for (Object member : list) {
        out.append(before).append(line(member));
        before = ", ";
      }
      return list.isEmpty() ? "[]" : out.append("]").toString();
    }
    return CanonicalJson.text(value);
  }
}
