package org.duskply.engine.colour;

import java.util.Arrays;

/**
 * Linear Bradford adaptation from one white to another: {@code B⁻¹ · diag(B·to / B·from) · B} on
 * XYZ, with the cone matrix B of ICC.1:2010 annex E and CSS Color 4.
 */
public final class Bradford {
  private static final double[] CONES = {
    0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296
  };
  private static final double[] CONES_INVERSE = Matrix3.inverse(CONES);

  private Bradford() {}

  /**
   * The matrix that carries XYZ under white {@code from} to XYZ under white {@code to}; exactly the
   * identity where they are equal.
   *
   * @param from XYZ of a white, with positive cone responses
   * @param to as {@code from}
   */
  public static double[] between(double[] from, double[] to) {
    if (Arrays.equals(from, to)) {
      return Matrix3.identity();
    }
    double[] a = cones(from);
    double[] b = cones(to);
    double[] gains = Matrix3.diagonal(b[0] / a[0], b[1] / a[1], b[2] / a[2]);
    return Matrix3.multiply(CONES_INVERSE, Matrix3.multiply(gains, CONES));
  }

  /** The white with every cone response raised to {@code least}; itself where none is below. */
  static double[] held(double[] white, double least) {
    double[] a = cones(white);
    if (Math.min(a[0], Math.min(a[1], a[2])) >= least) {
      return white;
    }
    return Matrix3.apply(
        CONES_INVERSE, Math.max(a[0], least), Math.max(a[1], least), Math.max(a[2], least));
  }

  /** The three cone responses to XYZ. */
  static double[] cones(double[] xyz) {
    return Matrix3.apply(CONES, xyz);
  }
}
