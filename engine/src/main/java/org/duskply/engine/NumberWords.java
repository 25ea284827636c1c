package org.duskply.engine;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers for people. */
final class NumberWords {
  private static final int DIGITS = 3;

  private NumberWords() {}

  /** A number as a recipe would write it. */
  static String exact(double value) {
    return plain(BigDecimal.valueOf(value));
  }

  /** A number as a formula would write it, with a true minus sign. */
  static String signed(double value) {
    return value < 0 ? "−" + exact(-value) : exact(value);
  }

  /** One plus a number, as one would write the sum of what a recipe says. */
  static String onePlus(double value) {
    return plain(BigDecimal.ONE.add(BigDecimal.valueOf(value)));
  }

  /** How far a number is from one, as one would write it: −0.15 for 0.85. */
  static double fromOne(double value) {
    return BigDecimal.valueOf(value).subtract(BigDecimal.ONE).doubleValue();
  }

  /** Half of a number. */
  static String half(double value) {
    return plain(BigDecimal.valueOf(value).divide(BigDecimal.valueOf(2)));
  }

  /** A factor as a percentage, with all its digits: 85 % for 0.85. */
  static String share(double factor) {
    return plain(BigDecimal.valueOf(factor).movePointRight(2)) + " %";
  }

  /** How far a factor is from one as a percentage, with all its digits: 15 % for 0.85 and 1.15. */
  static String change(double factor) {
    return share(Math.abs(fromOne(factor)));
  }

  /** So many stops. */
  static String stops(double stops) {
    return exact(stops) + (stops == 1 ? " stop" : " stops");
  }

  /** A number to three digits. */
  static String rough(double value) {
    return plain(new BigDecimal(value, new MathContext(DIGITS)));
  }

  /** A share as a percentage to one decimal. */
  static String percent(double share) {
    double percent = 100 * share;
    return percent > 0 && percent < 0.05
        ? "less than 0.1 %"
        : String.format(Locale.ROOT, "%.1f %%", percent);
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
