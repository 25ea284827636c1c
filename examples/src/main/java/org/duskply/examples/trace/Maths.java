package org.duskply.examples.trace;

/**
 * Elementary functions made of exact arithmetic alone, so that they give the same bits on every
 * machine and are fast enough for every ray. Errors: below 2e-7 relative ({@code exp2}, {@code
 * log2}), 1e-6 absolute ({@code sin}, {@code cos}), 1e-4 radians ({@code angle}).
 */
public final class Maths {
  private static final double TWO_PI = 2 * Math.PI;
  private static final double LN_2 = 0.6931471805599453;

  private Maths() {}

  /** Two to the power {@code x}; 0 below −1000. */
  public static double exp2(double x) {
    if (x < -1000) {
      return 0;
    }
    double whole = Math.floor(x);
    double z = (x - whole) * LN_2;
    double tail = 1 + z / 5 * (1 + z / 6 * (1 + z / 7 * (1 + z / 8)));
    double series = 1 + z * (1 + z / 2 * (1 + z / 3 * (1 + z / 4 * tail)));
    return series * Double.longBitsToDouble(((long) whole + 1023) << 52);
  }

  /** e to the power {@code x}. */
  public static double exp(double x) {
    return exp2(x / LN_2);
  }

  /** The logarithm to base 2 of a positive number. */
  public static double log2(double x) {
    long bits = Double.doubleToRawLongBits(x);
    long exponent = (bits >> 52) - 1023;
    double mantissa = Double.longBitsToDouble((bits & 0xFFFFFFFFFFFFFL) | 0x3FF0000000000000L);
    if (mantissa > 1.4142135623730951) {
      mantissa *= 0.5;
      exponent++;
    }
    double s = (mantissa - 1) / (mantissa + 1);
    double q = s * s;
    double series = s * (2 + q * (2.0 / 3 + q * (2.0 / 5 + q * (2.0 / 7 + q * (2.0 / 9)))));
    return exponent + series / LN_2;
  }

  /** {@code x} to the power {@code p}; 0 for x ≤ 0. */
  public static double pow(double x, double p) {
    return x <= 0 ? 0 : exp2(p * log2(x));
  }

  public static double sin(double x) {
    double turns = x / TWO_PI;
    double r = (turns - Math.floor(turns + 0.5)) * TWO_PI;
    if (r > Math.PI / 2) {
      r = Math.PI - r;
    } else if (r < -Math.PI / 2) {
      r = -Math.PI - r;
    }
    double q = r * r;
    return r * (1 - q / 6 * (1 - q / 20 * (1 - q / 42 * (1 - q / 72 * (1 - q / 110)))));
  }

  public static double cos(double x) {
    return sin(x + Math.PI / 2);
  }

  /** The angle of the point (x, y) as seen from the origin, −π…π, 0 along +x. */
  public static double angle(double y, double x) {
    double ax = Math.abs(x);
    double ay = Math.abs(y);
    double q = Math.min(ax, ay) / Math.max(Math.max(ax, ay), 1e-300);
    double s = q * q;
    double a =
        q
            * (0.99997726
                + s
                    * (-0.33262347
                        + s
                            * (0.19354346
                                + s * (-0.11643287 + s * 0.05265332 - s * s * 0.01172120))));
    a = ay > ax ? Math.PI / 2 - a : a;
    a = x < 0 ? Math.PI - a : a;
    return y < 0 ? -a : a;
  }

  /** 0 up to {@code from}, 1 from {@code to} on, a smooth cubic between. */
  public static double smooth(double from, double to, double x) {
    double u = hold((x - from) / (to - from), 0, 1);
    return u * u * (3 - 2 * u);
  }

  public static double hold(double x, double least, double most) {
    return x < least ? least : x > most ? most : x;
  }

  public static double mix(double a, double b, double share) {
    return a + (b - a) * share;
  }

  public static double fraction(double x) {
    return x - Math.floor(x);
  }
}
