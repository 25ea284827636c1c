package org.duskply.engine.svg;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The declarations of a {@code style} attribute: {@code display: none; fill-rule: evenodd}. */
final class SvgStyle {
  /** What can change an outline; all other declarations are let go. */
  private static final Set<String> READ =
      Set.of("display", "visibility", "fill-rule", "clip-rule", "transform", "transform-origin");

  private static final int LONGEST_NAME = 64;

  private SvgStyle() {}

  /** The last value of each property that is read, of those that are declared. */
  static Map<String, String> values(String style) {
    Map<String, String> values = new HashMap<>();
    int colon = style.indexOf(':');
    for (int from = 0; from < style.length() && colon >= 0; ) {
      int end = style.indexOf(';', from);
      int to = end < 0 ? style.length() : end;
      if (colon < to) {
        String name = name(style, from, colon);
        if (READ.contains(name)) {
          values.put(name, style.substring(colon + 1, to).replace("!important", "").strip());
        }
      }
      from = to + 1;
      colon = colon < from ? style.indexOf(':', from) : colon;
    }
    return values;
  }

  private static String name(String style, int from, int to) {
    int start = from;
    while (start < to && Character.isWhitespace(style.charAt(start))) {
      start++;
    }
    String name = style.substring(start, Math.min(to, start + LONGEST_NAME));
    return name.strip().toLowerCase(Locale.ROOT);
  }
}
