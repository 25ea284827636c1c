package org.duskply.engine.testing.reference;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Oklab;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;

/** The adjustments one after the other on one pixel, each with its own way to its axis and back. */
public final class ReferenceAdjust {
  private static final double EPSILON = StrictMath.pow(2, -10);

  private ReferenceAdjust() {}

  /** Linear red, green and blue after {@code list}. */
  public static double[] of(List<Adjustment> list, ColourSpace working, double... rgb) {
    double[] pixel = rgb.clone();
    for (Adjustment adjustment : list) {
      pixel =
          adjustment instanceof Saturation saturation
              ? saturated(saturation.factor(), working, pixel)
              : toned(channel(adjustment), tone(adjustment), working, pixel);
    }
    return pixel;
  }

  /** What the adjustment makes of one linear value. */
  public static DoubleUnaryOperator tone(Adjustment adjustment) {
    if (adjustment instanceof Exposure exposure) {
      return x -> x * StrictMath.pow(2, exposure.stops());
    }
    if (adjustment instanceof Power power) {
      return x -> {
        double v = Srgb.encoded(Math.abs(x));
        return Math.signum(x) * Srgb.linear(StrictMath.pow(v, power.power()));
      };
    }
    if (adjustment instanceof Contrast contrast) {
      return x -> contrasted(contrast.strength(), contrast.pivot(), x);
    }
    Curve curve = (Curve) adjustment;
    double[] xs = curve.points().stream().mapToDouble(CurvePoint::x).toArray();
    double[] ys = curve.points().stream().mapToDouble(CurvePoint::y).toArray();
    ReferenceCurve through = new ReferenceCurve(xs, ys);
    return curve.axis() == Axis.LINEAR
        ? through::at
        : x -> Srgb.linear(through.at(Srgb.encoded(x)));
  }

  private static double contrasted(double strength, double pivot, double x) {
    double t = pivot / 256;
    return Math.abs(x) >= t
        ? Math.signum(x) * pivot * StrictMath.pow(Math.abs(x) / pivot, 1 + strength)
        : x * StrictMath.pow(t / pivot, strength);
  }

  private static Channel channel(Adjustment adjustment) {
    return adjustment instanceof Curve curve
        ? curve.channel()
        : adjustment instanceof Contrast contrast ? contrast.channel() : Channel.RGB;
  }

  private static double[] toned(
      Channel channel, DoubleUnaryOperator tone, ColourSpace working, double[] rgb) {
    if (channel == Channel.LUMINANCE) {
      return newLuminance(tone, working.luminance(), rgb);
    }
    Channel[] each = {Channel.RED, Channel.GREEN, Channel.BLUE};
    double[] made = rgb.clone();
    for (int i = 0; i < 3; i++) {
      if (channel == Channel.RGB || channel == each[i]) {
        made[i] = tone.applyAsDouble(rgb[i]);
      }
    }
    return made;
  }

  private static double[] newLuminance(DoubleUnaryOperator tone, double[] weights, double[] rgb) {
    double y = weights[0] * rgb[0] + weights[1] * rgb[1] + weights[2] * rgb[2];
    double wanted = tone.applyAsDouble(y);
    double gain = Math.max(wanted, 0) / Math.max(y, EPSILON);
    double[] made = new double[3];
    for (int i = 0; i < 3; i++) {
      made[i] = wanted + (rgb[i] - y) * gain;
    }
    return made;
  }

  private static double[] saturated(double factor, ColourSpace working, double[] rgb) {
    Oklab oklab = Oklab.of(working);
    double[] lab = oklab.lab(rgb[0], rgb[1], rgb[2]);
    return oklab.rgb(lab[0], factor * lab[1], factor * lab[2]);
  }
}
