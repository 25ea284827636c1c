package org.duskply.engine.testing.reference;

/**
 * Monotone interpolation by Fritsch and Butland (1984) in the four Hermite basis functions, one
 * interval looked for from the left; straight before the first and after the last point.
 */
public final class HermiteCurve {
  private HermiteCurve() {}

  /** The curve through {@code (x, y)} at {@code v}. */
  public static double at(double[] x, double[] y, double v) {
    int n = x.length;
    if (v < x[0]) {
      return y[0] + slope(x, y, 0) * (v - x[0]);
    }
    if (v > x[n - 1]) {
      double steepest = Math.max(slope(x, y, n - 1), y[n - 1] / x[n - 1]);
      return y[n - 1] + steepest * (v - x[n - 1]);
    }
    int k = 0;
    while (k < n - 2 && v > x[k + 1]) {
      k++;
    }
    double h = x[k + 1] - x[k];
    double t = (v - x[k]) / h;
    double u = 1 - t;
    return (1 + 2 * t) * u * u * y[k]
        + t * u * u * h * slope(x, y, k)
        + t * t * (3 - 2 * t) * y[k + 1]
        - t * t * u * h * slope(x, y, k + 1);
  }

  /** The slope at point {@code k}. */
  public static double slope(double[] x, double[] y, int k) {
    int n = x.length;
    if (n == 2) {
      return secant(x, y, 0);
    }
    if (k == 0) {
      return end(x[1] - x[0], x[2] - x[1], secant(x, y, 0), secant(x, y, 1));
    }
    if (k == n - 1) {
      return end(
          x[n - 1] - x[n - 2], x[n - 2] - x[n - 3], secant(x, y, n - 2), secant(x, y, n - 3));
    }
    double left = secant(x, y, k - 1);
    double right = secant(x, y, k);
    if (left * right <= 0) {
      return 0;
    }
    double w1 = 2 * (x[k + 1] - x[k]) + (x[k] - x[k - 1]);
    double w2 = (x[k + 1] - x[k]) + 2 * (x[k] - x[k - 1]);
    return (w1 + w2) / (w1 / left + w2 / right);
  }

  private static double end(double h0, double h1, double d0, double d1) {
    double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    return slope * d0 <= 0 ? 0 : slope;
  }

  private static double secant(double[] x, double[] y, int k) {
    return (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
  }
}
