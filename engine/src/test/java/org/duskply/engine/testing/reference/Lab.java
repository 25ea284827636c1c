package org.duskply.engine.testing.reference;

/**
 * CIELAB (ISO/CIE 11664-4) of sRGB colours (IEC 61966-2-1), relative to their own white D65 without
 * adaptation.
 */
public final class Lab {
  private static final double EPSILON = 216d / 24389;
  private static final double KAPPA = 24389d / 27;
  // Primaries and white of IEC 61966-2-1 as CSS Color 4 prints their matrix.
  private static final double[][] TO_XYZ = {
    {506752d / 1228815, 87881d / 245763, 12673d / 70218},
    {87098d / 409605, 175762d / 245763, 12673d / 175545},
    {7918d / 409605, 87881d / 737289, 1001167d / 1053270}
  };

  private Lab() {}

  /** L*, a*, b* of encoded red, green, blue, each 0…1. */
  public static double[] ofSrgb(double red, double green, double blue) {
    return ofLinearSrgb(Srgb.linear(red), Srgb.linear(green), Srgb.linear(blue));
  }

  /** L*, a*, b* of linear red, green, blue. */
  public static double[] ofLinearSrgb(double red, double green, double blue) {
    double[] f = new double[3];
    for (int i = 0; i < 3; i++) {
      double[] row = TO_XYZ[i];
      f[i] = root((row[0] * red + row[1] * green + row[2] * blue) / (row[0] + row[1] + row[2]));
    }
    return new double[] {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
  }

  private static double root(double t) {
    return t > EPSILON ? StrictMath.cbrt(t) : (KAPPA * t + 16) / 116;
  }

  /**
   * The mean CIEDE2000 difference of two pictures of equally many pixels.
   *
   * @param one planes red, green, blue of encoded sRGB, each 0…1
   */
  public static double meanDifference(float[][] one, float[][] other) {
    double sum = 0;
    for (int i = 0; i < one[0].length; i++) {
      sum +=
          DeltaE2000.of(
              ofSrgb(one[0][i], one[1][i], one[2][i]),
              ofSrgb(other[0][i], other[1][i], other[2][i]));
    }
    return sum / one[0].length;
  }
}
