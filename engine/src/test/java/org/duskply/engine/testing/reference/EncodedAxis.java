package org.duskply.engine.testing.reference;

/** The curve of IEC 61966-2-1 and its inverse; odd below 0 (CSS Color 4), unbounded above 1. */
public final class EncodedAxis {
  private EncodedAxis() {}

  /** Linear to encoded. */
  public static double encode(double x) {
    double size = Math.abs(x);
    double v = size <= 0.0031308 ? 12.92 * size : 1.055 * StrictMath.pow(size, 1 / 2.4) - 0.055;
    return x < 0 ? -v : v;
  }

  /** Encoded to linear. */
  public static double decode(double v) {
    double size = Math.abs(v);
    double x = size <= 0.04045 ? size / 12.92 : StrictMath.pow((size + 0.055) / 1.055, 2.4);
    return v < 0 ? -x : x;
  }
}
