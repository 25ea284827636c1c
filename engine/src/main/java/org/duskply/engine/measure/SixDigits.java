package org.duskply.engine.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Measured numbers as they are used: rounded to six significant decimal digits, so that what {@code
 * explain} prints can be written into a recipe and gives the same bits.
 */
public final class SixDigits {
  private static final MathContext SIX = new MathContext(6, RoundingMode.HALF_EVEN);

  private SixDigits() {}

  /** The nearest number of six significant digits; {@code value} is finite. */
  public static double round(double value) {
    return new BigDecimal(value).round(SIX).doubleValue() + 0.0;
  }
}
