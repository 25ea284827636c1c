package org.duskply.engine.adjust;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * A smooth curve through points that never turns back: cubic Hermite pieces with the slopes of
 * Fritsch and Butland (1984, SIAM J. Sci. Stat. Comput. 5, 300–304). A slope inside is the weighted
 * harmonic mean of the two secants beside it, 0 where either is flat; at an end it is the
 * three-point slope.
 *
 * <p>Before the first point the curve goes on straight at its end slope; after the last at the
 * greater of its end slope and {@code y/x} of the last point, so that what was brighter than white
 * keeps its order.
 */
final class MonotoneCubic implements DoubleUnaryOperator {
  // Steeper than floats can tell from a jump, and far from overflow: points may lie 1e-300 apart.
  private static final double STEEPEST = 1e30;

  private final double[] x;
  private final double[] y;
  private final double[] slopes;

  /**
   * A curve through points.
   *
   * @param x at least two, strictly increasing from 0 or more
   * @param y as many, not decreasing
   */
  MonotoneCubic(double[] x, double[] y) {
    this.x = x.clone();
    this.y = y.clone();
    this.slopes = slopes(x, y);
  }

  /** The slope at each point. */
  double[] slopes() {
    return slopes.clone();
  }

  @Override
  public double applyAsDouble(double v) {
    int last = x.length - 1;
    if (v <= x[0]) {
      return y[0] + slopes[0] * (v - x[0]);
    }
    if (v >= x[last]) {
      return y[last]
          + Math.max(slopes[last], Math.min(STEEPEST, y[last] / x[last])) * (v - x[last]);
    }
    int found = Arrays.binarySearch(x, v);
    return found >= 0 ? y[found] : between(-2 - found, v);
  }

  private double between(int i, double v) {
    double width = x[i + 1] - x[i];
    double t = (v - x[i]) / width;
    double rise = y[i + 1] - y[i];
    double begins = slopes[i] * width;
    double ends = slopes[i + 1] * width;
    // The Hermite form about the left point: y, begins, and what rise and ends ask beyond it.
    double square = 3 * rise - 2 * begins - ends;
    double cube = begins + ends - 2 * rise;
    return y[i] + t * (begins + t * (square + t * cube));
  }

  private static double[] slopes(double[] x, double[] y) {
    int last = x.length - 1;
    double[] widths = new double[last];
    double[] secants = new double[last];
    for (int i = 0; i < last; i++) {
      widths[i] = x[i + 1] - x[i];
      secants[i] = Math.min(STEEPEST, (y[i + 1] - y[i]) / widths[i]);
    }
    double[] slopes = new double[last + 1];
    if (last == 1) {
      Arrays.fill(slopes, secants[0]);
      return slopes;
    }
    for (int i = 1; i < last; i++) {
      slopes[i] = inside(widths[i - 1], widths[i], secants[i - 1], secants[i]);
    }
    slopes[0] = atEnd(widths[0], widths[1], secants[0], secants[1]);
    slopes[last] = atEnd(widths[last - 1], widths[last - 2], secants[last - 1], secants[last - 2]);
    return slopes;
  }

  private static double inside(double before, double after, double left, double right) {
    if (left <= 0 || right <= 0) {
      return 0;
    }
    double ofLeft = 2 * after + before;
    double ofRight = after + 2 * before;
    return (ofLeft + ofRight) / (ofLeft / left + ofRight / right);
  }

  private static double atEnd(double near, double far, double secant, double next) {
    return Math.max(0, ((2 * near + far) * secant - near * next) / (near + far));
  }
}
