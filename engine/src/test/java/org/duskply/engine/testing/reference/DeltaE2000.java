package org.duskply.engine.testing.reference;

/**
 * The colour difference CIEDE2000 (ISO/CIE 11664-6; Sharma, Wu and Dalal 2005), all weights 1: the
 * measure of whether two pictures look alike. About 1 can just be seen side by side.
 */
public final class DeltaE2000 {
  private static final double POW_25_7 = 6103515625.0;

  private DeltaE2000() {}

  /**
   * The mean over a picture of the difference of two pixels.
   *
   * @param one red, green and blue of linear sRGB
   * @param other the same
   */
  public static double mean(float[][] one, float[][] other) {
    double sum = 0;
    int count = one[0].length;
    for (int i = 0; i < count; i++) {
      sum +=
          of(
              CieLab.of(one[0][i], one[1][i], one[2][i]),
              CieLab.of(other[0][i], other[1][i], other[2][i]));
    }
    return sum / count;
  }

  /** The difference of two colours in CIELAB. */
  public static double of(double[] one, double[] other) {
    double meanChroma =
        (StrictMath.hypot(one[1], one[2]) + StrictMath.hypot(other[1], other[2])) / 2;
    double stretch = 1 + 0.5 * (1 - StrictMath.sqrt(seventh(meanChroma)));
    double a1 = stretch * one[1];
    double a2 = stretch * other[1];
    double c1 = StrictMath.hypot(a1, one[2]);
    double c2 = StrictMath.hypot(a2, other[2]);
    double h1 = hue(a1, one[2]);
    double h2 = hue(a2, other[2]);
    boolean grey = c1 * c2 == 0;
    double turn = grey ? 0 : turn(h2 - h1);
    double dh = 2 * StrictMath.sqrt(c1 * c2) * sin(turn / 2);
    double l = (one[0] + other[0]) / 2;
    double c = (c1 + c2) / 2;
    double h = grey ? h1 + h2 : meanHue(h1, h2);
    double t =
        1 - 0.17 * cos(h - 30) + 0.24 * cos(2 * h) + 0.32 * cos(3 * h + 6) - 0.20 * cos(4 * h - 63);
    double fromMiddle = (l - 50) * (l - 50);
    double byL = (other[0] - one[0]) / (1 + 0.015 * fromMiddle / StrictMath.sqrt(20 + fromMiddle));
    double byC = (c2 - c1) / (1 + 0.045 * c);
    double byH = dh / (1 + 0.015 * c * t);
    double blue = (h - 275) / 25;
    double rotation = -2 * StrictMath.sqrt(seventh(c)) * sin(60 * StrictMath.exp(-blue * blue));
    return StrictMath.sqrt(byL * byL + byC * byC + byH * byH + rotation * byC * byH);
  }

  private static double seventh(double chroma) {
    double power = StrictMath.pow(chroma, 7);
    return power / (power + POW_25_7);
  }

  private static double hue(double a, double b) {
    double degrees = StrictMath.toDegrees(StrictMath.atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  private static double turn(double degrees) {
    return degrees > 180 ? degrees - 360 : degrees < -180 ? degrees + 360 : degrees;
  }

  private static double meanHue(double h1, double h2) {
    double sum = h1 + h2;
    if (Math.abs(h1 - h2) <= 180) {
      return sum / 2;
    }
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }

  private static double sin(double degrees) {
    return StrictMath.sin(StrictMath.toRadians(degrees));
  }

  private static double cos(double degrees) {
    return StrictMath.cos(StrictMath.toRadians(degrees));
  }
}
