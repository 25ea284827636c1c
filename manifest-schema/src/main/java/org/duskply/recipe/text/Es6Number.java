package org.duskply.recipe.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * Numbers as ECMAScript writes them (ECMA-262, Number::toString; required by RFC 8785, 3.2.2.3):
 * the fewest digits that read back to the same double, among those the nearest to it. {@code
 * Double.toString} is not that: before JDK 19 it may give a digit too many.
 */
public final class Es6Number {
  private static final long EXACT_INTEGERS = 1L << 53;

  /** Two decimals of so many digits never read to the same double, so none is shorter. */
  private static final int UNIQUE_DIGITS = 15;

  private Es6Number() {}

  /**
   * The text of a finite number; −0 is 0.
   *
   * @throws IllegalArgumentException if the value is not finite
   */
  public static String text(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a number in a recipe must be finite");
    }
    if (value == (long) value && Math.abs(value) < EXACT_INTEGERS) {
      return Long.toString((long) value);
    }
    BigDecimal digits = shortest(Math.abs(value));
    return (value < 0 ? "-" : "") + layOut(digits);
  }

  /** Fewest digits; {@code Double.toString} always reads back, so its count is where to begin. */
  private static BigDecimal shortest(double value) {
    BigDecimal known = new BigDecimal(Double.toString(value)).stripTrailingZeros();
    int count = known.precision();
    if (count <= UNIQUE_DIGITS && value >= Double.MIN_NORMAL) {
      return known;
    }
    BigDecimal exact = new BigDecimal(value);
    BigDecimal best = nearest(exact, value, count);
    while (count > 1) {
      BigDecimal fewer = nearest(exact, value, --count);
      if (fewer == null) {
        break;
      }
      best = fewer;
    }
    if (best == null) {
      throw new IllegalStateException("no digits read back to " + value);
    }
    return best.stripTrailingZeros();
  }

  /**
   * Of the two decimals of {@code count} digits around the exact value, the nearer one that reads
   * back to it. Both are asked, since the interval of a power of two is wider above than below.
   */
  private static @Nullable BigDecimal nearest(BigDecimal exact, double value, int count) {
    BigDecimal half = exact.round(new MathContext(count, RoundingMode.HALF_EVEN));
    if (half.doubleValue() == value) {
      return half;
    }
    boolean wasDown = half.compareTo(exact) < 0;
    BigDecimal other =
        exact.round(new MathContext(count, wasDown ? RoundingMode.UP : RoundingMode.DOWN));
    return other.doubleValue() == value ? other : null;
  }

  private static String layOut(BigDecimal number) {
    String digits = number.unscaledValue().toString();
    int k = digits.length();
    int n = k - number.scale();
    if (k <= n && n <= 21) {
      return digits + "0".repeat(n - k);
    }
    if (0 < n && n <= 21) {
      return digits.substring(0, n) + "." + digits.substring(n);
    }
    if (-6 < n && n <= 0) {
      return "0." + "0".repeat(-n) + digits;
    }
    int exponent = n - 1;
    String mantissa = k == 1 ? digits : digits.charAt(0) + "." + digits.substring(1);
    return mantissa + "e" + (exponent < 0 ? "-" : "+") + Math.abs(exponent);
  }
}
