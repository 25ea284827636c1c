package org.duskply.engine.colour;

/**
 * A power with a straight toe, the general form that ICC.1 (parametricCurveType, function type 4)
 * and every published curve of the named spaces share:
 *
 * <pre>
 *   L = (a·V + b)^gamma + e   for V ≥ join
 *   L = slope·V + f           for 0 ≤ V &lt; join
 *   L = 2·L(0) − L(−V)        for V &lt; 0
 * </pre>
 *
 * A base below 0 counts as 0. The inverse takes the toe below the toe's end value and never answers
 * less than {@code join} beyond it, so that it never falls, also where rounded constants make the
 * two pieces miss each other or overlap. In an overlap, where two encoded values mean the same
 * light, the answer is the one on the toe.
 *
 * @param gamma above 0
 * @param a above 0
 * @param slope 0 or more
 */
record ParametricCurve(
    double gamma, double a, double b, double slope, double join, double e, double f)
    implements TransferCurve {

  @Override
  public double toLinear(double encoded) {
    return encoded < 0 ? 2 * forward(0) - forward(-encoded) : forward(encoded);
  }

  @Override
  public double toEncoded(double linear) {
    double black = forward(0);
    return linear < black ? -inverse(2 * black - linear, black) : inverse(linear, black);
  }

  /** The linear values, from black up, at which the inverse has a corner. */
  double[] corners() {
    double black = forward(0);
    double toe = slope * join + f;
    return join > 0 && toe > black ? new double[] {black, toe} : new double[] {black};
  }

  private double forward(double v) {
    return v < join ? slope * v + f : StrictMath.pow(StrictMath.max(0, a * v + b), gamma) + e;
  }

  private double inverse(double l, double black) {
    if (l <= black) {
      return 0;
    }
    if (l < slope * join + f) {
      return (l - f) / slope;
    }
    double v = (StrictMath.pow(StrictMath.max(0, l - e), 1 / gamma) - b) / a;
    return StrictMath.max(StrictMath.max(0, join), v);
  }
}
