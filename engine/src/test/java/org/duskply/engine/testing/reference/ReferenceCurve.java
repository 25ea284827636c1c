package org.duskply.engine.testing.reference;

/**
 * Fritsch and Butland's monotone cubic (1984) in the form of powers of the way from a point, y +
 * m·s + c·s² + d·s³, with this engine's straight lines beyond the ends.
 */
public final class ReferenceCurve {
  private final double[] x;
  private final double[] y;
  private final double[] m;

  public ReferenceCurve(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    int n = x.length;
    this.m = new double[n];
    for (int k = 1; k < n - 1; k++) {
      double before = secant(k - 1);
      double after = secant(k);
      double h0 = x[k] - x[k - 1];
      double h1 = x[k + 1] - x[k];
      double w0 = 2 * h1 + h0;
      double w1 = h1 + 2 * h0;
      m[k] = before * after <= 0 ? 0 : (w0 + w1) / (w0 / before + w1 / after);
    }
    m[0] = n == 2 ? secant(0) : end(x[1] - x[0], x[2] - x[1], secant(0), secant(1));
    m[n - 1] =
        n == 2
            ? secant(0)
            : end(x[n - 1] - x[n - 2], x[n - 2] - x[n - 3], secant(n - 2), secant(n - 3));
  }

  private double secant(int k) {
    return (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
  }

  private static double end(double h0, double h1, double d0, double d1) {
    double m = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (Math.signum(m) != Math.signum(d0)) {
      return 0;
    }
    return Math.signum(d0) != Math.signum(d1) && Math.abs(m) > 3 * Math.abs(d0) ? 3 * d0 : m;
  }

  /** The slope at point {@code k}. */
  public double slope(int k) {
    return m[k];
  }

  /** The curve at {@code v}. */
  public double at(double v) {
    int last = x.length - 1;
    if (v <= x[0]) {
      return y[0] + Math.max(0, m[0]) * (v - x[0]);
    }
    if (v >= x[last]) {
      return y[last] + Math.max(m[last], y[last] / x[last]) * (v - x[last]);
    }
    int k = 0;
    while (x[k + 1] < v) {
      k++;
    }
    double h = x[k + 1] - x[k];
    double s = v - x[k];
    double c = (3 * secant(k) - 2 * m[k] - m[k + 1]) / h;
    double d = (m[k] + m[k + 1] - 2 * secant(k)) / (h * h);
    return y[k] + s * (m[k] + s * (c + s * d));
  }
}
