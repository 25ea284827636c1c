package org.duskply.engine.svg;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Lengths in user units: plain numbers and px as they are, units of print at 96 px an inch (CSS
 * Values and Units Level 3, "Absolute lengths"), per cent of a length that the caller gives.
 */
final class SvgLength {
  private static final double INCH = 96;
  private static final Pattern LENGTH = Pattern.compile("([-+0-9.eE]*[0-9.])\\s*([a-zA-Z%]*)");
  private static final Map<String, Double> UNITS =
      Map.of(
          "", 1.0,
          "px", 1.0,
          "in", INCH,
          "cm", INCH / 2.54,
          "mm", INCH / 25.4,
          "q", INCH / 101.6,
          "pt", INCH / 72,
          "pc", INCH / 6);

  private SvgLength() {}

  /**
   * A length in user units; null where it cannot be read.
   *
   * @param whole what 100 % is
   */
  static @Nullable Double parse(String text, double whole) {
    Matcher length = LENGTH.matcher(text.strip());
    if (!length.matches()) {
      return null;
    }
    Double number = SvgNumbers.one(length.group(1));
    String unit = length.group(2).toLowerCase(Locale.ROOT);
    Double each = unit.equals("%") ? Double.valueOf(whole / 100) : UNITS.get(unit);
    return number == null || each == null ? null : Double.valueOf(number * each);
  }
}
