package org.duskply.engine.testing.reference;

import java.util.function.DoubleUnaryOperator;

/** The adjustments of one pixel in plain double. */
public final class AdjustFormulas {
  private static final double NEUTRAL_BELOW = 1 / 1024.0;

  private AdjustFormulas() {}

  /** Each channel through a curve. */
  public static double[] each(DoubleUnaryOperator curve, double r, double g, double b) {
    return new double[] {curve.applyAsDouble(r), curve.applyAsDouble(g), curve.applyAsDouble(b)};
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

  /** Contrast about a pivot in linear light. */
  public static DoubleUnaryOperator contrast(double strength, double pivot) {
    double straight = pivot / 256;
    return x ->
        Math.abs(x) >= straight
            ? Math.signum(x) * pivot * StrictMath.pow(Math.abs(x) / pivot, 1 + strength)
            : x * StrictMath.pow(straight / pivot, strength);
  }
}
