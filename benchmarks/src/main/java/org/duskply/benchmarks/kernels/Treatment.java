package org.duskply.benchmarks.kernels;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HermiteCurve;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.adjust.Shoulder;
import org.duskply.recipe.shape.PerChannel;

/** Adjustments as recipes have them, each with its formula in double. */
public enum Treatment {
  EXPOSURE(each(x -> x * StrictMath.pow(2, 0.3)), new Exposure(0.3)),
  CURVE(each(curved(Axis.ENCODED)), curve(Channel.RGB, Axis.ENCODED)),
  LINEAR_CURVE(each(curved(Axis.LINEAR)), curve(Channel.RGB, Axis.LINEAR)),
  CURVE_OF_LUMINANCE(onLuminance(curved(Axis.ENCODED)), curve(Channel.LUMINANCE, Axis.ENCODED)),
  ENDS(each(encoded(AdjustFormulas.ends(0.02, 0.97))), new Ends(0.02, 0.97)),
  POWER(each(encoded(AdjustFormulas.power(0.95))), new Power(0.95)),
  CONTRAST(each(AdjustFormulas.contrast(0.15, 0.18)), new Contrast(0.15, 0.18, Channel.RGB)),
  CONTRAST_OF_LUMINANCE(
      onLuminance(AdjustFormulas.contrast(0.15, 0.18)),
      new Contrast(0.15, 0.18, Channel.LUMINANCE)),
  GEL(gel(20), new Gel(20.0, null, null, 0)),
  SATURATION(turned(new Hue(0, 1.1, 0, null, null, 0)), new Saturation(1.1)),
  HUE(turned(new Hue(-6, 1.15, 0.01, null, null, 0)), new Hue(-6, 1.15, 0.01, null, null, 0)),
  RANGE_OF_HUES(
      turned(new Hue(-6, 1.15, 0.01, 260.0, 70.0, 20.0)),
      new Hue(-6, 1.15, 0.01, 260.0, 70.0, 20.0)),
  CDL(each(encoded(AdjustFormulas.slopeOffsetPower(1.1, -0.02, 0.9, false))), cdl(1)),
  CDL_WITH_SATURATION(saturatedCdl(1.2), cdl(1.2)),
  SHOULDER(each(AdjustFormulas.shoulder(0.6, 4)), new Shoulder(0.6, 4)),
  FOUR_TONES(
      each(
          encoded(
              AdjustFormulas.ends(0.02, 0.97)
                  .andThen(AdjustFormulas.power(0.95))
                  .andThen(v -> HermiteCurve.at(Points.X, Points.Y, v))
                  .andThen(AdjustFormulas.power(1.1)))),
      new Ends(0.02, 0.97),
      new Power(0.95),
      curve(Channel.RGB, Axis.ENCODED),
      new Power(1.1));

  /** What becomes of a linear pixel. */
  interface Formula {
    double[] of(double[] pixel);
  }

  /** Of a curve; apart, because constants are made before the other fields of their enum. */
  private static final class Points {
    static final double[] X = {0, 0.25, 0.5, 0.75, 1};
    static final double[] Y = {0, 0.2, 0.5, 0.8, 1};
  }

  private final Formula formula;
  private final List<Adjustment> adjustments;

  Treatment(Formula formula, Adjustment... adjustments) {
    this.formula = formula;
    this.adjustments = List.of(adjustments);
  }

  /** In order. */
  List<Adjustment> adjustments() {
    return adjustments;
  }

  /** In double. */
  Formula formula() {
    return formula;
  }

  private static Formula each(DoubleUnaryOperator curve) {
    return pixel -> AdjustFormulas.each(curve, pixel[0], pixel[1], pixel[2]);
  }

  private static Formula onLuminance(DoubleUnaryOperator curve) {
    double[] weights = Adjusting.SPACE.luminance();
    return pixel -> AdjustFormulas.onLuminance(curve, weights, pixel[0], pixel[1], pixel[2]);
  }

  private static DoubleUnaryOperator encoded(DoubleUnaryOperator curve) {
    return AdjustFormulas.onEncodedAxis(curve);
  }

  private static DoubleUnaryOperator curved(Axis axis) {
    DoubleUnaryOperator curve = v -> HermiteCurve.at(Points.X, Points.Y, v);
    return axis == Axis.LINEAR ? curve : encoded(curve);
  }

  private static Curve curve(Channel channel, Axis axis) {
    List<CurvePoint> points = new ArrayList<>();
    for (int i = 0; i < Points.X.length; i++) {
      points.add(new CurvePoint(Points.X[i], Points.Y[i]));
    }
    return new Curve(points, channel, axis);
  }

  private static Formula gel(double mired) {
    double[] matrix = GelMatrix.of(new Gel(mired, null, null, 0), Adjusting.SPACE);
    return pixel -> Matrix3.apply(matrix, pixel[0], pixel[1], pixel[2]);
  }

  private static Formula turned(Hue hue) {
    Oklab oklab = Oklab.of(Adjusting.SPACE);
    return pixel -> {
      double[] lab = oklab.lab(pixel[0], pixel[1], pixel[2]);
      double weight = weight(hue, lab[1], lab[2]);
      double chroma = StrictMath.hypot(lab[1], lab[2]) * (1 + (hue.chroma() - 1) * weight);
      double angle = StrictMath.atan2(lab[2], lab[1]) + StrictMath.toRadians(hue.turn() * weight);
      return oklab.rgb(
          lab[0] + hue.lightness() * weight,
          chroma * StrictMath.cos(angle),
          chroma * StrictMath.sin(angle));
    };
  }

  private static double weight(Hue hue, double a, double b) {
    Double centre = hue.centre();
    Double width = hue.width();
    return centre == null || width == null ? 1 : HueWeight.of(centre, width, hue.soft(), a, b);
  }

  private static Cdl cdl(double saturation) {
    return new Cdl(
        PerChannel.all(1.1),
        PerChannel.all(-0.02),
        PerChannel.all(0.9),
        saturation,
        Axis.ENCODED,
        false);
  }

  private static Formula saturatedCdl(double saturation) {
    DoubleUnaryOperator there = EncodedAxis::encode;
    DoubleUnaryOperator tone =
        there.andThen(AdjustFormulas.slopeOffsetPower(1.1, -0.02, 0.9, false));
    return pixel -> {
      double[] toned = AdjustFormulas.each(tone, pixel[0], pixel[1], pixel[2]);
      double[] mixed = AdjustFormulas.cdlSaturation(saturation, false, toned);
      return AdjustFormulas.each(EncodedAxis::decode, mixed[0], mixed[1], mixed[2]);
    };
  }
}
