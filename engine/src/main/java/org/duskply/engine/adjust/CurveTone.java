package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;

/** The {@link Tone} of a curve's points, on the curve's own axis. */
final class CurveTone {
  private CurveTone() {}

  static Tone of(Curve curve) {
    List<CurvePoint> points = curve.points();
    double[] x = points.stream().mapToDouble(CurvePoint::x).toArray();
    double[] y = points.stream().mapToDouble(CurvePoint::y).toArray();
    List<Double> corners = points.stream().map(CurvePoint::x).toList();
    return new Tone(new MonotoneCubic(x, y), corners);
  }
}
