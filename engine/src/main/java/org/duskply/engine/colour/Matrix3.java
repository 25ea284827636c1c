package org.duskply.engine.colour;

/** Three by three matrices in double precision, nine numbers row by row. */
public final class Matrix3 {
  private Matrix3() {}

  /** A new identity. */
  public static double[] identity() {
    return new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1};
  }

  /** The matrix with these three numbers down its diagonal. */
  public static double[] diagonal(double a, double b, double c) {
    return new double[] {a, 0, 0, 0, b, 0, 0, 0, c};
  }

  /** {@code m} applied after {@code n}: the product m·n. */
  public static double[] multiply(double[] m, double[] n) {
    double[] product = new double[9];
    for (int row = 0; row < 3; row++) {
      for (int column = 0; column < 3; column++) {
        product[3 * row + column] =
            m[3 * row] * n[column]
                + m[3 * row + 1] * n[3 + column]
                + m[3 * row + 2] * n[6 + column];
      }
    }
    return product;
  }

  /** The product m·v of a matrix and a column of three. */
  public static double[] apply(double[] m, double... v) {
    return new double[] {
      m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
      m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
      m[6] * v[0] + m[7] * v[1] + m[8] * v[2]
    };
  }

  /** The determinant. */
  public static double determinant(double[] m) {
    return m[0] * (m[4] * m[8] - m[5] * m[7])
        + m[1] * (m[5] * m[6] - m[3] * m[8])
        + m[2] * (m[3] * m[7] - m[4] * m[6]);
  }

  /** The inverse, by cofactors; {@code m} must not be singular. */
  public static double[] inverse(double[] m) {
    double d = determinant(m);
    return new double[] {
      (m[4] * m[8] - m[5] * m[7]) / d,
      (m[2] * m[7] - m[1] * m[8]) / d,
      (m[1] * m[5] - m[2] * m[4]) / d,
      (m[5] * m[6] - m[3] * m[8]) / d,
      (m[0] * m[8] - m[2] * m[6]) / d,
      (m[2] * m[3] - m[0] * m[5]) / d,
      (m[3] * m[7] - m[4] * m[6]) / d,
      (m[1] * m[6] - m[0] * m[7]) / d,
      (m[0] * m[4] - m[1] * m[3]) / d
    };
  }
}
