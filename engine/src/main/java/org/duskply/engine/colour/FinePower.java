package org.duskply.engine.colour;

/**
 * A power in double, by tables and short series as in {@code pixel.Numbers} but finer: for bases
 * from {@link #LEAST} to {@link #MOST} and exponents from 0 to {@link #MOST_EXPONENT}, within
 * {@link #ERROR} of the true one, relatively.
 *
 * <p>Of the error, the logarithm of up to 20 takes a little more than 2⁻⁴⁸ (two sums, each rounded
 * by 2⁻⁴⁹, and the table's entry), which the exponent makes 2⁻⁴⁵; the product of up to 160 is
 * rounded by 2⁻⁴⁶; both count ln 2 fold. Series end at 2⁻⁵⁸ and 2⁻⁵⁴.
 */
final class FinePower {
  static final double LEAST = 0x1p-20;
  static final double MOST = 0x1p20;
  static final double MOST_EXPONENT = 8;
  static final double ERROR = 0x1p-43;

  private static final int MANTISSA_BITS = 52;
  private static final long MANTISSA = (1L << MANTISSA_BITS) - 1;
  private static final long ONE = 1023L << MANTISSA_BITS;
  private static final double LN2 = StrictMath.log(2);

  private static final int LOG_BITS = 7;
  private static final double[] LOG_INVERSE = new double[1 << LOG_BITS];
  private static final double[] LOG_TABLE = new double[1 << LOG_BITS];

  private static final int EXP_BITS = 6;
  private static final double[] EXP_TABLE = new double[1 << EXP_BITS];

  // Adding it rounds to a whole number, which then stands in the low bits. As in pixel.Numbers, no
  // conversion is the machine's own, which would wait for the pixel before.
  private static final double ROUNDER = 0x1.8p52;
  private static final long ROUNDER_BITS = Double.doubleToRawLongBits(ROUNDER);

  static {
    for (int i = 0; i < LOG_TABLE.length; i++) {
      LOG_INVERSE[i] = 1 / (1 + (i + 0.5) / LOG_TABLE.length);
      LOG_TABLE[i] = -StrictMath.log(LOG_INVERSE[i]) / LN2;
    }
    for (int i = 0; i < EXP_TABLE.length; i++) {
      EXP_TABLE[i] = StrictMath.pow(2, i / (double) EXP_TABLE.length);
    }
  }

  // log2(1 + r) = r/ln 2 · (1 − r/2 + r²/3 …), |r| ≤ 2⁻⁸
  private static final double LOG_1 = 1 / LN2;
  private static final double LOG_2 = -1 / (2 * LN2);
  private static final double LOG_3 = 1 / (3 * LN2);
  private static final double LOG_4 = -1 / (4 * LN2);
  private static final double LOG_5 = 1 / (5 * LN2);
  private static final double LOG_6 = -1 / (6 * LN2);

  // 2^r = 1 + r·ln 2 + (r·ln 2)²/2 …, |r| ≤ 2⁻⁷
  private static final double EXP_1 = LN2;
  private static final double EXP_2 = EXP_1 * LN2 / 2;
  private static final double EXP_3 = EXP_2 * LN2 / 3;
  private static final double EXP_4 = EXP_3 * LN2 / 4;
  private static final double EXP_5 = EXP_4 * LN2 / 5;

  private FinePower() {}

  /** {@code base} to the power {@code exponent}, both within the bounds. */
  static double of(double base, double exponent) {
    return exp2(exponent * log2(base));
  }

  private static double log2(double x) {
    long bits = Double.doubleToRawLongBits(x);
    int i = (int) (bits >>> (MANTISSA_BITS - LOG_BITS)) & (LOG_TABLE.length - 1);
    double r = Double.longBitsToDouble(bits & MANTISSA | ONE) * LOG_INVERSE[i] - 1;
    double series = LOG_3 + r * (LOG_4 + r * (LOG_5 + r * LOG_6));
    long exponent = (bits >>> MANTISSA_BITS) - 1023;
    return (Double.longBitsToDouble(ROUNDER_BITS + exponent) - ROUNDER + LOG_TABLE[i])
        + r * (LOG_1 + r * (LOG_2 + r * series));
  }

  private static double exp2(double x) {
    double rounded = x * EXP_TABLE.length + ROUNDER;
    int n = (int) Double.doubleToRawLongBits(rounded);
    double r = x - (rounded - ROUNDER) / EXP_TABLE.length;
    double series = EXP_2 + r * (EXP_3 + r * (EXP_4 + r * EXP_5));
    return EXP_TABLE[n & (EXP_TABLE.length - 1)]
        * (1 + r * (EXP_1 + r * series))
        * Double.longBitsToDouble(ONE + ((long) (n >> EXP_BITS) << MANTISSA_BITS));
  }
}
