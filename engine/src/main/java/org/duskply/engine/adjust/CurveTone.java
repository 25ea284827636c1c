package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;

/**
 * A curve through points: a {@link MonotoneCubic} between them; below the first the slope it has
 * there; above the last that slope or {@code y/x} of the last point, whichever is greater, so that
 * what was brighter than white stays brighter.
 */
final class CurveTone {
  private CurveTone() {}

  /** Whether every point lies on the diagonal: then so does the curve, also beyond its ends. */
  static boolean identity(Curve curve) {
    return curve.points().stream().allMatch(point -> point.x() == point.y());
  }

  static Tone of(Curve curve) {
    List<CurvePoint> points = curve.points();
    double[] x = points.stream().mapToDouble(CurvePoint::x).toArray();
    double[] y = points.stream().mapToDouble(CurvePoint::y).toArray();
    int last = x.length - 1;
    double proportional = MonotoneCubic.held(y[last] / x[last]);
    MonotoneCubic cubic = new MonotoneCubic(x, y);
    double slopeBelow = Math.max(0, cubic.slope(0));
    double slopeAbove = Math.max(cubic.slope(last), proportional);
    return new Tone(
        curve.axis(),
        v ->
            v < x[0]
                ? y[0] + slopeBelow * (v - x[0])
                : v > x[last] ? y[last] + slopeAbove * (v - x[last]) : cubic.at(v),
        x);
  }
}
