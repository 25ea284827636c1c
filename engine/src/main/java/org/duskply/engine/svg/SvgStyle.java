package org.duskply.engine.svg;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The declarations of a {@code style} attribute: {@code display: none; fill-rule: evenodd}. */
final class SvgStyle {
  private SvgStyle() {}

  /** The last value of a property, absent where it is not declared. */
  static @Nullable String value(String style, String property) {
    String value = null;
    for (String declaration : style.split(";")) {
      int colon = declaration.indexOf(':');
      if (colon > 0
          && declaration.substring(0, colon).strip().toLowerCase(Locale.ROOT).equals(property)) {
        value = declaration.substring(colon + 1).replace("!important", "").strip();
      }
    }
    return value;
  }
}
