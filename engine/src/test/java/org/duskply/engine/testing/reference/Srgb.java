package org.duskply.engine.testing.reference;

/** The curve of IEC 61966-2-1, odd below 0, continued above 1 by its own formula. */
public final class Srgb {
  private Srgb() {}

  /** The encoded value of a linear one. */
  public static double encoded(double x) {
    if (x < 0) {
      return -encoded(-x);
    }
    return x <= 0.0031308 ? 12.92 * x : 1.055 * StrictMath.pow(x, 1 / 2.4) - 0.055;
  }

  /** The linear value of an encoded one. */
  public static double linear(double v) {
    if (v < 0) {
      return -linear(-v);
    }
    return v <= 0.04045 ? v / 12.92 : StrictMath.pow((v + 0.055) / 1.055, 2.4);
  }
}
