package org.duskply.engine.pixel;

/**
 * A map of the plane that keeps straight lines straight and parallels parallel: {@code x' = a·x +
 * c·y + e}, {@code y' = b·x + d·y + f}, the letters in the order of an SVG {@code matrix(a b c d e
 * f)}.
 *
 * @param a x' for each x
 * @param b y' for each x
 * @param c x' for each y
 * @param d y' for each y
 * @param e x' of the origin
 * @param f y' of the origin
 */
public record Affine(double a, double b, double c, double d, double e, double f) {
  /** The map that changes nothing. */
  public static final Affine IDENTITY = new Affine(1, 0, 0, 1, 0, 0);

  /** Moves by {@code x} and {@code y}. */
  public static Affine translation(double x, double y) {
    return new Affine(1, 0, 0, 1, x, y);
  }

  /** Grows from the origin. */
  public static Affine scaling(double across, double down) {
    return new Affine(across, 0, 0, down, 0, 0);
  }

  /** Turns about the origin, clockwise as seen with y down. */
  public static Affine rotation(double degrees) {
    double angle = StrictMath.toRadians(degrees % 360);
    double cos = StrictMath.cos(angle);
    double sin = StrictMath.sin(angle);
    return new Affine(cos, sin, -sin, cos, 0, 0);
  }

  /** First {@code inner}, then this: the matrix product. */
  public Affine times(Affine inner) {
    return new Affine(
        a * inner.a + c * inner.b,
        b * inner.a + d * inner.b,
        a * inner.c + c * inner.d,
        b * inner.c + d * inner.d,
        a * inner.e + c * inner.f + e,
        b * inner.e + d * inner.f + f);
  }

  /** Where a point goes, across. */
  public double x(double x, double y) {
    return a * x + c * y + e;
  }

  /** Where a point goes, down. */
  public double y(double x, double y) {
    return b * x + d * y + f;
  }

  /** How much longer a length can become: the greatest singular value. */
  public double stretch() {
    double half = 0.5 * (a * a + b * b + c * c + d * d);
    double det = a * d - b * c;
    return Math.sqrt(half + Math.sqrt(Math.max(0, half * half - det * det)));
  }
}
