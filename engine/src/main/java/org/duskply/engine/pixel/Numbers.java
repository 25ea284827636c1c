package org.duskply.engine.pixel;

/**
 * Logarithm, power and roots for pixel loops: the same bits on every machine and every Java, which
 * {@code Math} does not promise.
 *
 * <p>Each splits its argument into exponent, table entry and a small remainder, and takes a short
 * series of the remainder in double; tables come from {@code StrictMath}, the rest is plus, minus
 * and times. The double result is within 2⁻³³ of the true one, relatively, so that the float
 * returned is within 0.51 units of its last place (2⁻²⁴ relatively, for results that are not
 * denormal).
 *
 * <p>Finite values give finite results: what would be infinite is held at {@link Float#MAX_VALUE},
 * and the logarithm of nothing is {@link #LOG2_OF_NOTHING}. NaN gives NaN.
 */
public final class Numbers {
  /** What {@link #log2} gives for 0 and below: one less than that of the least float. */
  public static final float LOG2_OF_NOTHING = -150f;

  private static final int ONE = 0x3f800000;
  private static final int MANTISSA = 0x007fffff;
  private static final int LEAST_NORMAL = 0x00800000;
  private static final int INFINITE = 0x7f800000;
  private static final float TO_NORMAL = 0x1p24f;

  // 64 intervals of the mantissa; the one around 1 is centred on 1, whose entry is exactly 0, so
  // that logarithms close to 0 keep all their digits. The first starts near √½.
  private static final int LOG_SHIFT = 17;
  private static final int LOG_INTERVALS = 1 << (23 - LOG_SHIFT);
  private static final int LOG_START = ONE - (1 << (LOG_SHIFT - 1)) - (37 << LOG_SHIFT);
  private static final double[] LOG_INVERSE = new double[LOG_INTERVALS];
  private static final double[] LOG_TABLE = new double[LOG_INTERVALS];

  // Adding it rounds to a whole number, which then stands in the low bits. Conversions between int,
  // float and double are made by bits throughout: the machine's own wait for the pixel before.
  private static final double ROUNDER = 0x1.8p52;
  private static final long ROUNDER_BITS = Double.doubleToRawLongBits(ROUNDER);

  private static final int EXP_STEPS = 32;
  private static final double[] EXP_TABLE = new double[EXP_STEPS];

  private static final int CBRT_SHIFT = 18;
  private static final int CBRT_INTERVALS = 1 << (23 - CBRT_SHIFT);
  private static final double[] CBRT_INVERSE = new double[CBRT_INTERVALS];
  private static final double[] CBRT_TABLE = new double[3 * CBRT_INTERVALS];

  private static final double LN2 = StrictMath.log(2);

  static {
    for (int i = 0; i < LOG_INTERVALS; i++) {
      int middle = LOG_START + (i << LOG_SHIFT) + (1 << (LOG_SHIFT - 1));
      LOG_INVERSE[i] = 1 / (double) Float.intBitsToFloat(middle);
      LOG_TABLE[i] = -StrictMath.log(LOG_INVERSE[i]) / LN2;
    }
    for (int i = 0; i < EXP_STEPS; i++) {
      EXP_TABLE[i] = StrictMath.pow(2, i / (double) EXP_STEPS);
    }
    for (int i = 0; i < CBRT_INTERVALS; i++) {
      CBRT_INVERSE[i] = 1 / (1 + (i + 0.5) / CBRT_INTERVALS);
      for (int turn = 0; turn < 3; turn++) {
        CBRT_TABLE[turn * CBRT_INTERVALS + i] = StrictMath.cbrt((1 << turn) / CBRT_INVERSE[i]);
      }
    }
  }

  // log2(1 + r) = r/ln 2 · (1 − r/2 + r²/3 − r³/4 + r⁴/5 …), |r| ≤ 2⁻⁷
  private static final double LOG_1 = 1 / LN2;
  private static final double LOG_2 = -1 / (2 * LN2);
  private static final double LOG_3 = 1 / (3 * LN2);
  private static final double LOG_4 = -1 / (4 * LN2);
  private static final double LOG_5 = 1 / (5 * LN2);

  // 2^r = 1 + r·ln 2 + (r·ln 2)²/2 …, |r| ≤ 2⁻⁶
  private static final double EXP_1 = LN2;
  private static final double EXP_2 = LN2 * LN2 / 2;
  private static final double EXP_3 = LN2 * LN2 * LN2 / 6;
  private static final double EXP_4 = LN2 * LN2 * LN2 * LN2 / 24;

  // ∛(1 + r) = 1 + r/3 − r²/9 + 5r³/81 − 10r⁴/243 …, |r| ≤ 2⁻⁶
  private static final double CBRT_1 = 1 / 3d;
  private static final double CBRT_2 = -1 / 9d;
  private static final double CBRT_3 = 5 / 81d;
  private static final double CBRT_4 = -10 / 243d;

  private Numbers() {}

  /** The logarithm to base 2: stops above 1. {@link #LOG2_OF_NOTHING} for 0 and below. */
  public static float log2(float x) {
    return (float) log2InDouble(x);
  }

  /** Two to the power {@code x}: the factor of so many stops. */
  public static float exp2(float x) {
    return (float) exp2InDouble(x);
  }

  /**
   * {@code |x|} to the power {@code p}, with the sign of {@code x}. Nothing to a power is nothing;
   * to the power 0 it is 1, below that the greatest float.
   */
  public static float pow(float x, double p) {
    float size = Math.abs(x);
    float y = size == 0 ? powerOfNothing(p) : (float) exp2InDouble(p * log2InDouble(size));
    return withSignOf(x, y);
  }

  /** The cube root, with the sign of {@code x}. */
  public static float cbrt(float x) {
    float size = Math.abs(x);
    int bits = Float.floatToRawIntBits(size);
    if (bits < LEAST_NORMAL || bits >= INFINITE) {
      return cbrtOfSpecial(x, size);
    }
    return withSignOf(x, (float) cbrtOfNormal(bits));
  }

  /**
   * A smooth way from 0 to 1: 1 at {@code to} and above, else 0 at {@code from} and below, {@code
   * 3u² − 2u³} between. A step where the two are one.
   */
  public static float smooth(float from, float to, float t) {
    if (t >= to) {
      return 1;
    }
    if (!(t > from)) {
      return 0;
    }
    float u = (t - from) / (to - from);
    return u * u * (3 - 2 * u);
  }

  private static double log2InDouble(float x) {
    int bits = Float.floatToRawIntBits(x);
    if (bits < LEAST_NORMAL || bits >= INFINITE) {
      return log2OfSpecial(x);
    }
    return log2OfNormal(bits);
  }

  private static double log2OfNormal(int bits) {
    int above = bits - LOG_START;
    int exponent = above >> 23;
    int i = (above >> LOG_SHIFT) & (LOG_INTERVALS - 1);
    double r = widened(bits - (exponent << 23)) * LOG_INVERSE[i] - 1;
    return (Double.longBitsToDouble(ROUNDER_BITS + exponent) - ROUNDER + LOG_TABLE[i])
        + r * (LOG_1 + r * (LOG_2 + r * (LOG_3 + r * (LOG_4 + r * LOG_5))));
  }

  private static double log2OfSpecial(float x) {
    if (x > 0 && x < Float.MIN_NORMAL) {
      return log2OfNormal(Float.floatToRawIntBits(x * TO_NORMAL)) - 24;
    }
    return x <= 0 ? LOG2_OF_NOTHING : x == Float.POSITIVE_INFINITY ? 128 : Double.NaN;
  }

  private static double exp2InDouble(double x) {
    if (x >= 128) {
      return Float.MAX_VALUE;
    }
    if (x < LOG2_OF_NOTHING) {
      return 0;
    }
    double rounded = x * EXP_STEPS + ROUNDER;
    int n = (int) Double.doubleToRawLongBits(rounded);
    double r = x - (rounded - ROUNDER) / EXP_STEPS;
    double y =
        EXP_TABLE[n & (EXP_STEPS - 1)]
            * (1 + r * (EXP_1 + r * (EXP_2 + r * (EXP_3 + r * EXP_4))))
            * powerOfTwo(n >> 5);
    return y > Float.MAX_VALUE ? Float.MAX_VALUE : y;
  }

  private static double cbrtOfNormal(int bits) {
    int exponent = (bits >>> 23) + 2; // 3·43 above the true one
    int third = exponent / 3;
    int i = (bits & MANTISSA) >>> CBRT_SHIFT;
    double r = widened(bits & MANTISSA | ONE) * CBRT_INVERSE[i] - 1;
    return CBRT_TABLE[(exponent - 3 * third) * CBRT_INTERVALS + i]
        * (1 + r * (CBRT_1 + r * (CBRT_2 + r * (CBRT_3 + r * CBRT_4))))
        * powerOfTwo(third - 43);
  }

  private static float cbrtOfSpecial(float x, float size) {
    if (size > 0 && size < Float.MIN_NORMAL) {
      double root = cbrtOfNormal(Float.floatToRawIntBits(size * TO_NORMAL));
      return withSignOf(x, (float) (root * 0x1p-8));
    }
    return x == 0 || size != Float.POSITIVE_INFINITY ? x : withSignOf(x, Float.MAX_VALUE);
  }

  private static float powerOfNothing(double p) {
    return p > 0 ? 0 : p == 0 ? 1 : p < 0 ? Float.MAX_VALUE : Float.NaN;
  }

  /** The double equal to the float of these bits, which is positive and normal. */
  private static double widened(int bits) {
    return Double.longBitsToDouble(((long) bits << 29) + (896L << 52));
  }

  private static double powerOfTwo(int exponent) {
    return Double.longBitsToDouble((long) (1023 + exponent) << 52);
  }

  private static float withSignOf(float x, float y) {
    return Float.intBitsToFloat(
        Float.floatToRawIntBits(y) | Float.floatToRawIntBits(x) & 0x80000000);
  }
}
