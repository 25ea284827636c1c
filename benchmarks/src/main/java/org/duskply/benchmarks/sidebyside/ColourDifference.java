package org.duskply.benchmarks.sidebyside;

/**
 * The colour difference CIEDE2000 (ISO/CIE 11664-6; Sharma, Wu and Dalal 2005), all weights 1, of
 * colours in CIELAB (ISO/CIE 11664-4). About 1 can just be seen side by side.
 */
final class ColourDifference {
  /** 25⁷: where the formula's chroma terms turn. */
  private static final double TURN = 6103515625.0;

  private static final double EPSILON = 216 / 24389.0;
  private static final double KAPPA = 24389 / 27.0;

  // IEC 61966-2-1: linear sRGB to XYZ, each row over the white of D65 (its own sum).
  private static final double[] X = overWhite(0.4123907993, 0.3575843394, 0.1804807884);
  private static final double[] Y = overWhite(0.2126390059, 0.7151686788, 0.0721923154);
  private static final double[] Z = overWhite(0.0193308187, 0.1191947798, 0.9505321522);

  private ColourDifference() {}

  /** L*, a* and b* of linear sRGB in D65. */
  static double[] lab(double red, double green, double blue) {
    double x = root(X[0] * red + X[1] * green + X[2] * blue);
    double y = root(Y[0] * red + Y[1] * green + Y[2] * blue);
    double z = root(Z[0] * red + Z[1] * green + Z[2] * blue);
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  /** The difference of two colours, each L*, a*, b*. */
  static double of(double[] one, double[] other) {
    double stretch =
        1.5
            - 0.5
                * Math.sqrt(
                    share((Math.hypot(one[1], one[2]) + Math.hypot(other[1], other[2])) / 2));
    double a1 = stretch * one[1];
    double a2 = stretch * other[1];
    double c1 = Math.hypot(a1, one[2]);
    double c2 = Math.hypot(a2, other[2]);
    double h1 = hue(a1, one[2]);
    double h2 = hue(a2, other[2]);
    boolean grey = c1 * c2 == 0;
    double apart = grey ? 0 : h2 - h1;
    boolean round = Math.abs(apart) > Math.PI;
    double way = round ? apart - Math.copySign(2 * Math.PI, apart) : apart;
    double h = grey ? h1 + h2 : middle(h1 + h2, round);
    double l = (one[0] + other[0]) / 2 - 50;
    double c = (c1 + c2) / 2;
    double t =
        1
            - 0.17 * Math.cos(h - Math.toRadians(30))
            + 0.24 * Math.cos(2 * h)
            + 0.32 * Math.cos(3 * h + Math.toRadians(6))
            - 0.20 * Math.cos(4 * h - Math.toRadians(63));
    double byL = (other[0] - one[0]) / (1 + 0.015 * l * l / Math.sqrt(20 + l * l));
    double byC = (c2 - c1) / (1 + 0.045 * c);
    double byH = 2 * Math.sqrt(c1 * c2) * Math.sin(way / 2) / (1 + 0.015 * c * t);
    double blue = (Math.toDegrees(h) - 275) / 25;
    double turned =
        -2 * Math.sqrt(share(c)) * Math.sin(Math.toRadians(60) * Math.exp(-blue * blue));
    return Math.sqrt(byL * byL + byC * byC + byH * byH + turned * byC * byH);
  }

  /** The middle of two hues on the shorter way round, 0 to 2π. */
  private static double middle(double sum, boolean round) {
    if (!round) {
      return sum / 2;
    }
    return sum < 2 * Math.PI ? sum / 2 + Math.PI : sum / 2 - Math.PI;
  }

  /** 0 to 2π. Strict, since opposite hues hang on the last bit. */
  private static double hue(double a, double b) {
    double angle = StrictMath.atan2(b, a);
    return angle < 0 ? angle + 2 * Math.PI : angle;
  }

  private static double share(double chroma) {
    double cube = chroma * chroma * chroma;
    double seventh = cube * cube * chroma;
    return seventh / (seventh + TURN);
  }

  private static double root(double t) {
    return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
  }

  private static double[] overWhite(double red, double green, double blue) {
    double sum = red + green + blue;
    return new double[] {red / sum, green / sum, blue / sum};
  }
}
