package org.duskply.engine.testing.reference;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.Oklab;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;

/** Adjustments in plain double, with what the engine's floats may add; done one by one. */
final class PlainAdjustments {
  private static final double UNIT = Estimate.UNIT;

  /** What the cubics of {@code Segments} and one rounding may be off, relatively and at least. */
  private static final double FIT = 0x1p-23;

  private static final double LEAST = 0x1p-33;

  private final ColourSpace working;
  private final double[] weights;
  private final Oklab oklab;

  PlainAdjustments(ColourSpace working) {
    this.working = working;
    this.weights = working.luminance();
    this.oklab = Oklab.of(working);
  }

  /** What a list makes of a colour. */
  Estimate all(List<Adjustment> adjustments, Estimate in) {
    Estimate out = in;
    for (Adjustment adjustment : adjustments) {
      out = one(adjustment, out);
    }
    return out;
  }

  private Estimate one(Adjustment adjustment, Estimate in) {
    if (adjustment instanceof Exposure exposure) {
      double factor = StrictMath.pow(2, exposure.stops());
      return each(x -> x * factor, in, 2 * UNIT);
    }
    if (adjustment instanceof Power power) {
      return each(AdjustFormulas.onEncodedAxis(AdjustFormulas.power(power.power())), in, FIT);
    }
    if (adjustment instanceof Contrast contrast) {
      DoubleUnaryOperator curve = AdjustFormulas.contrast(contrast.strength(), contrast.pivot());
      double steep = 1 + Math.max(contrast.strength(), 0);
      return contrast.channel() == Channel.RGB
          ? each(curve, in, (2 * steep + 4) * UNIT)
          : onLuminance(curve, in, (2 * steep + 4) * UNIT);
    }
    if (adjustment instanceof Curve curve) {
      return curved(curve, in);
    }
    if (adjustment instanceof Saturation saturation) {
      return saturated(saturation.factor(), in);
    }
    if (adjustment instanceof Gel gel) {
      return filtered(GelMatrix.of(gel, working), in);
    }
    throw new IllegalArgumentException("no reference for " + adjustment);
  }

  private Estimate each(DoubleUnaryOperator curve, Estimate in, double share) {
    return in.through(
        c -> AdjustFormulas.each(curve, c[0], c[1], c[2]),
        want ->
            new double[] {
              share * Math.abs(want[0]) + LEAST,
              share * Math.abs(want[1]) + LEAST,
              share * Math.abs(want[2]) + LEAST
            });
  }

  private Estimate curved(Curve curve, Estimate in) {
    double[] x = curve.points().stream().mapToDouble(CurvePoint::x).toArray();
    double[] y = curve.points().stream().mapToDouble(CurvePoint::y).toArray();
    DoubleUnaryOperator own = v -> HermiteCurve.at(x, y, v);
    DoubleUnaryOperator linear =
        curve.axis() == Axis.LINEAR ? own : AdjustFormulas.onEncodedAxis(own);
    if (curve.channel() == Channel.LUMINANCE) {
      return onLuminance(linear, in, FIT);
    }
    Estimate all = each(linear, in, FIT);
    double[] colour = in.colour().clone();
    double[] off = in.off().clone();
    List<Channel> channels = List.of(Channel.RED, Channel.GREEN, Channel.BLUE);
    for (int c = 0; c < 3; c++) {
      if (curve.channel() == Channel.RGB || curve.channel() == channels.get(c)) {
        colour[c] = all.colour()[c];
        off[c] = all.off()[c];
      }
    }
    return new Estimate(colour, off);
  }

  /**
   * Luminance is off by 4 units of the sum of its parts, so the wanted one by what the curve makes
   * of that and the curve's own share; the gain by these over what it is divided by; the result is
   * two products with the gain and two sums.
   */
  private Estimate onLuminance(DoubleUnaryOperator curve, Estimate in, double share) {
    double[] c = in.colour();
    double y = AdjustFormulas.luminance(weights, c[0], c[1], c[2]);
    double parts =
        AdjustFormulas.luminance(weights, Math.abs(c[0]), Math.abs(c[1]), Math.abs(c[2]));
    double offY = 4 * UNIT * parts;
    double wanted = curve.applyAsDouble(y);
    double offWanted =
        Math.max(
                Math.abs(curve.applyAsDouble(y + offY) - wanted),
                Math.abs(curve.applyAsDouble(y - offY) - wanted))
            + share * Math.abs(wanted)
            + LEAST;
    double base = Math.max(y, 0x1p-10);
    double gain = Math.abs(wanted) / base;
    double offGain = offWanted / base + gain * (offY / base + 2 * UNIT);
    double reach = Math.max(Math.abs(y), Estimate.greatest(c));
    double own = 2 * reach * (offGain + 2 * UNIT * gain) + offY * gain + offWanted;
    return in.through(
        v -> AdjustFormulas.onLuminance(curve, weights, v[0], v[1], v[2]),
        want -> new double[] {own, own, own});
  }

  private Estimate saturated(double factor, Estimate in) {
    double own = SaturationError.of(oklab, factor, in.colour());
    return in.through(
        c -> {
          double[] lab = oklab.lab(c[0], c[1], c[2]);
          return oklab.rgb(lab[0], factor * lab[1], factor * lab[2]);
        },
        want -> new double[] {own, own, own});
  }

  /** Each coefficient, product and sum rounded once: four units of the sum of the parts. */
  private static Estimate filtered(double[] matrix, Estimate in) {
    double[] c = in.colour();
    return in.through(
        v -> Matrix3.apply(matrix, v[0], v[1], v[2]),
        want -> {
          double[] own = new double[3];
          for (int row = 0; row < 3; row++) {
            for (int i = 0; i < 3; i++) {
              own[row] += 4 * UNIT * Math.abs(matrix[3 * row + i] * c[i]);
            }
          }
          return own;
        });
  }
}
