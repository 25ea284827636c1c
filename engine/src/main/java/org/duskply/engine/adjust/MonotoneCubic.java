package org.duskply.engine.adjust;

import java.util.Arrays;

/**
 * The cubic through points that never overshoots them: Hermite pieces whose slopes are those of F.
 * N. Fritsch and J. Butland, "A method for constructing local monotone piecewise cubic
 * interpolants", SIAM J. Sci. Stat. Comput. 5 (1984). With steps {@code h} and secants {@code δ},
 *
 * <pre>
 *   inside      (w₁ + w₂)/(w₁/δ₋ + w₂/δ₊),  w₁ = 2h₊ + h₋,  w₂ = h₊ + 2h₋;  0 where δ₋·δ₊ ≤ 0
 *   at the end  ((2h₀ + h₁)·δ₀ − h₀·δ₁)/(h₀ + h₁);  0 where its sign is not that of δ₀;
 *               at most 3δ₀ where δ₀ and δ₁ differ in sign
 * </pre>
 *
 * In double, for preparing.
 */
final class MonotoneCubic {
  // Beyond what floats can tell from a jump, far from overflow.
  private static final double STEEPEST = 1e30;

  private final double[] x;
  private final double[] y;
  private final double[] slopes;

  /** Through two or more points, {@code x} strictly increasing. */
  MonotoneCubic(double[] x, double[] y) {
    this.x = x.clone();
    this.y = y.clone();
    this.slopes = slopes(x, y);
  }

  private static double[] slopes(double[] x, double[] y) {
    int last = x.length - 1;
    double[] step = new double[last];
    double[] secant = new double[last];
    for (int i = 0; i < last; i++) {
      step[i] = x[i + 1] - x[i];
      secant[i] = held((y[i + 1] - y[i]) / step[i]);
    }
    if (last == 1) {
      return new double[] {secant[0], secant[0]};
    }
    double[] slopes = new double[last + 1];
    slopes[0] = endSlope(step[0], step[1], secant[0], secant[1]);
    for (int i = 1; i < last; i++) {
      slopes[i] = innerSlope(step[i - 1], step[i], secant[i - 1], secant[i]);
    }
    slopes[last] = endSlope(step[last - 1], step[last - 2], secant[last - 1], secant[last - 2]);
    return slopes;
  }

  private static double innerSlope(double before, double after, double rising, double next) {
    if (!(rising * next > 0)) {
      return 0;
    }
    double w1 = 2 * after + before;
    double w2 = after + 2 * before;
    return (w1 + w2) / (w1 / rising + w2 / next);
  }

  private static double endSlope(double step, double inner, double secant, double innerSecant) {
    double slope = ((2 * step + inner) * secant - step * innerSecant) / (step + inner);
    if (slope * secant <= 0) {
      return 0;
    }
    boolean turns = secant * innerSecant <= 0;
    return turns && Math.abs(slope) > 3 * Math.abs(secant) ? 3 * secant : slope;
  }

  private int pieceAt(double v) {
    int found = Arrays.binarySearch(x, v);
    int i = found < 0 ? -2 - found : found;
    return Math.max(0, Math.min(x.length - 2, i));
  }

  /** A slope that later sums and products can take. */
  static double held(double slope) {
    return Math.max(-STEEPEST, Math.min(STEEPEST, slope));
  }

  /** The slope at point {@code i}. */
  double slope(int i) {
    return slopes[i];
  }

  /** The curve at {@code v} from the first point to the last; exactly the point's y at a point. */
  double at(double v) {
    int i = pieceAt(v);
    double step = x[i + 1] - x[i];
    double t = (v - x[i]) / step;
    double u = 1 - t;
    // Weights of the ends, then of the slopes, in Hermite's basis.
    return y[i] * (u * u * (1 + 2 * t))
        + y[i + 1] * (t * t * (1 + 2 * u))
        + step * t * u * (u * slopes[i] - t * slopes[i + 1]);
  }
}
