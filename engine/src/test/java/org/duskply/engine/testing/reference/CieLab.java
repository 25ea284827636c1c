package org.duskply.engine.testing.reference;

/** CIELAB (ISO/CIE 11664-4) of linear sRGB in D65, without adaptation. */
public final class CieLab {
  // IEC 61966-2-1 primaries and D65 (0.3127, 0.3290) in full precision, as in CSS Color 4.
  private static final double[] XYZ = {
    506752 / 1228815.0, 87881 / 245763.0, 12673 / 70218.0,
    87098 / 409605.0, 175762 / 245763.0, 12673 / 175545.0,
    7918 / 409605.0, 87881 / 737289.0, 1001167 / 1053270.0
  };

  private CieLab() {}

  /** L*, a*, b*. */
  public static double[] of(double r, double g, double b) {
    double x = f(row(0, r, g, b) / row(0, 1, 1, 1));
    double y = f(row(1, r, g, b));
    double z = f(row(2, r, g, b) / row(2, 1, 1, 1));
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  private static double row(int i, double r, double g, double b) {
    return XYZ[3 * i] * r + XYZ[3 * i + 1] * g + XYZ[3 * i + 2] * b;
  }

  private static double f(double t) {
    return t > 216 / 24389.0 ? StrictMath.cbrt(t) : (24389 / 27.0 * t + 16) / 116;
  }
}
