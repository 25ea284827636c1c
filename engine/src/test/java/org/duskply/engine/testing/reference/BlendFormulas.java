package org.duskply.engine.testing.reference;

/** W3C Compositing and Blending 1, continued above 1 and below 0. */
public final class BlendFormulas {
  private BlendFormulas() {}

  /** The frame. */
  public static double normal(double b, double s) {
    return s;
  }

  /** The product. */
  public static double multiply(double b, double s) {
    return b * s;
  }

  /** The standard's within 0…1; below 0 held to 0; the greater where either is above 1. */
  public static double screen(double b, double s) {
    if (b < 0) {
      return screen(0, s);
    }
    if (s < 0) {
      return screen(b, 0);
    }
    return b <= 1 && s <= 1 ? b + s - b * s : Math.max(b, s);
  }

  /** The lesser. */
  public static double darken(double b, double s) {
    return b < s ? b : s;
  }

  /** The greater. */
  public static double lighten(double b, double s) {
    return b > s ? b : s;
  }

  /** The sum. */
  public static double plusLighter(double b, double s) {
    return b + s;
  }
}
