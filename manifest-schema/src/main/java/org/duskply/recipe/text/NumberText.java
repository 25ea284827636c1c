package org.duskply.recipe.text;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Numbers as a recipe writes them: those of JSON, with a plus sign allowed. What comes near but is
 * not one gets its own advice.
 */
final class NumberText {
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][-+]?[0-9]+)?");
  private static final int LONGEST_TRY = 40;
  private static final Pattern BARE_POINT = Pattern.compile("([-+]?)\\.([0-9]+)");
  private static final Pattern TRAILING_POINT = Pattern.compile("([-+]?[0-9]+)\\.");
  private static final Pattern LEADING_ZERO = Pattern.compile("([-+]?)0+([0-9]+(\\.[0-9]+)?)");
  private static final Pattern COMMA = Pattern.compile("([-+]?[0-9]+),([0-9]+)");
  private static final Pattern GROUPED = Pattern.compile("[-+]?[0-9]+([_' ][0-9]+)+");
  private static final Pattern COLON = Pattern.compile("[0-9]+(:[0-9]+)+");
  private static final Pattern FRACTION = Pattern.compile("([0-9]+)/([0-9]+)");
  private static final Pattern PERCENT = Pattern.compile("([0-9]+(\\.[0-9]+)?) ?%");
  private static final Pattern WITH_UNIT =
      Pattern.compile("([-+]?[0-9]+(\\.[0-9]+)?) ?([a-zA-Z]+)");
  private static final Pattern OTHER_BASE = Pattern.compile("[-+]?0[xob][0-9a-fA-F]+");
  private static final Pattern NOT_FINITE =
      Pattern.compile("[-+]?\\.(inf|Inf|INF|nan|NaN|NAN)|[-+]?Infinity|NaN");

  private NumberText() {}

  /** Whether a bare scalar is a number. */
  static boolean matches(String text) {
    return NUMBER.matcher(text).matches();
  }

  /** The number, −0 as 0; not finite when it is too large for a double. */
  static double value(String text) {
    return Double.parseDouble(text) + 0.0;
  }

  /** What to write in place of something that only looks like a number; null without advice. */
  static @Nullable String advice(String text) {
    if (text.length() > LONGEST_TRY) {
      return null; // And the patterns below would go deep on a long text.
    }
    String advice = pointAdvice(text);
    return advice != null ? advice : wordAdvice(text);
  }

  private static @Nullable String pointAdvice(String text) {
    Matcher bare = BARE_POINT.matcher(text);
    if (bare.matches()) {
      return "write " + bare.group(1) + "0." + bare.group(2) + ", with a digit before the point";
    }
    Matcher trailing = TRAILING_POINT.matcher(text);
    if (trailing.matches()) {
      return "write " + trailing.group(1) + ", without the point";
    }
    Matcher zero = LEADING_ZERO.matcher(text);
    if (zero.matches()) {
      return "write " + zero.group(1) + zero.group(2) + ", without the 0 in front";
    }
    Matcher comma = COMMA.matcher(text);
    if (comma.matches()) {
      return "write " + comma.group(1) + "." + comma.group(2) + ", with a decimal point";
    }
    return null;
  }

  private static @Nullable String wordAdvice(String text) {
    if (GROUPED.matcher(text).matches()) {
      return "write " + text.replaceAll("[_' ]", "") + ", digits without marks between them";
    }
    if (COLON.matcher(text).matches()) {
      return "two numbers with a colon are text here; write one number";
    }
    Matcher fraction = FRACTION.matcher(text);
    if (fraction.matches()) {
      return "fractions are not worked out; write it as a decimal number";
    }
    if (PERCENT.matcher(text).matches()) {
      return "percent are not worked out; write 50 % as 0.5";
    }
    Matcher unit = WITH_UNIT.matcher(text);
    if (unit.matches() && !OTHER_BASE.matcher(text).matches()) {
      return "write " + unit.group(1) + ": numbers stand without a unit";
    }
    if (OTHER_BASE.matcher(text).matches()) {
      return "write it as an ordinary decimal number";
    }
    return NOT_FINITE.matcher(text).matches() ? "a number must be finite" : null;
  }
}
