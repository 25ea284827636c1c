package org.duskply.engine.colour;

/** Whites as XYZ with Y = 1. */
public final class White {
  private static final double[] PCS = {0xF6D6 / 65536.0, 1, 0xD32D / 65536.0};

  private White() {}

  /** The white of chromaticity {@code (x, y)}; y must not be 0. */
  public static double[] ofChromaticity(double x, double y) {
    return new double[] {x / y, 1, (1 - x - y) / y};
  }

  /** The white of chromaticity {@code {x, y}}. */
  public static double[] ofChromaticity(double[] xy) {
    return ofChromaticity(xy[0], xy[1]);
  }

  /** D65 as the RGB standards write it: (0.3127, 0.3290). */
  public static double[] d65() {
    return ofChromaticity(0.3127, 0.3290);
  }

  /** D50 as CSS Color 4 writes it: (0.3457, 0.3585). */
  public static double[] d50() {
    return ofChromaticity(0.3457, 0.3585);
  }

  /**
   * D50 as ICC profiles store it, in s15Fixed16: (0.9642, 1, 0.8249). About 2·10⁻⁴ from {@link
   * #d50} in Z, so the two never stand for each other.
   */
  public static double[] profileConnection() {
    return PCS.clone();
  }
}
