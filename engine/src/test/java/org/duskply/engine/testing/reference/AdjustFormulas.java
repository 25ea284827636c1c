package org.duskply.engine.testing.reference;

import java.util.function.DoubleUnaryOperator;
import org.duskply.recipe.adjust.Channel;

/** The adjustments of one pixel in plain double. */
public final class AdjustFormulas {
  private static final double NEUTRAL_BELOW = 1 / 1024.0;

  private AdjustFormulas() {}

  /** Each channel through a curve. */
  public static double[] each(DoubleUnaryOperator curve, double r, double g, double b) {
    return new double[] {curve.applyAsDouble(r), curve.applyAsDouble(g), curve.applyAsDouble(b)};
  }

  /** One channel through a curve. */
  public static double[] alone(
      DoubleUnaryOperator curve, Channel channel, double r, double g, double b) {
    return new double[] {
      channel == Channel.RED ? curve.applyAsDouble(r) : r,
      channel == Channel.GREEN ? curve.applyAsDouble(g) : g,
      channel == Channel.BLUE ? curve.applyAsDouble(b) : b
    };
  }

  /** The luminance. */
  public static double luminance(double[] weights, double r, double g, double b) {
    return weights[0] * r + weights[1] * g + weights[2] * b;
  }

  /** Luminance through a curve, set by gain above 2⁻¹⁰ and by shift below. */
  public static double[] onLuminance(
      DoubleUnaryOperator curve, double[] weights, double r, double g, double b) {
    double y = luminance(weights, r, g, b);
    double wanted = curve.applyAsDouble(y);
    double gain = Math.max(wanted, 0) / Math.max(y, NEUTRAL_BELOW);
    double shift = wanted - y * gain;
    return new double[] {r * gain + shift, g * gain + shift, b * gain + shift};
  }

  /** A curve of the encoded axis as one of linear values. */
  public static DoubleUnaryOperator onEncodedAxis(DoubleUnaryOperator curve) {
    return x -> EncodedAxis.decode(curve.applyAsDouble(EncodedAxis.encode(x)));
  }

  /** A power, odd below 0. */
  public static DoubleUnaryOperator power(double p) {
    return v -> Math.signum(v) * StrictMath.pow(Math.abs(v), p);
  }

  /** Black and white points of the encoded axis. */
  public static DoubleUnaryOperator ends(double black, double white) {
    return v -> Math.max(0, (v - black) / (white - black));
  }

  /** Reinhard et al. 2002, equation 4, on what lies above {@code begins}. */
  public static DoubleUnaryOperator shoulder(double begins, double whiteAt) {
    return x -> {
      double u = (x - begins) / (1 - begins);
      double w = (whiteAt - begins) / (1 - begins);
      double bent = begins + (1 - begins) * u * (1 + u / (w * w)) / (1 + u);
      return x <= begins ? x : x >= whiteAt ? 1 : bent;
    };
  }

  /** Slope, offset and power of ASC CDL 1.2; clamped as there, or what is below 0 left alone. */
  public static DoubleUnaryOperator slopeOffsetPower(
      double slope, double offset, double power, boolean clamp) {
    return v -> {
      double t = v * slope + offset;
      double held = clamp ? Math.min(1, Math.max(0, t)) : t;
      return held < 0 ? held : StrictMath.pow(held, power);
    };
  }

  /** Saturation of ASC CDL 1.2. */
  public static double[] cdlSaturation(double saturation, boolean clamp, double... v) {
    double luma = 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2];
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      double mixed = luma + saturation * (v[i] - luma);
      out[i] = clamp ? Math.min(1, Math.max(0, mixed)) : mixed;
    }
    return out;
  }

  /** Contrast about a pivot in linear light. */
  public static DoubleUnaryOperator contrast(double strength, double pivot) {
    double straight = pivot / 256;
    return x ->
        Math.abs(x) >= straight
            ? Math.signum(x) * pivot * StrictMath.pow(Math.abs(x) / pivot, 1 + strength)
            : x * StrictMath.pow(straight / pivot, strength);
  }
}
