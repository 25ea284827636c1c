package org.duskply.engine.colour;

/**
 * How one channel's encoded value, 0…1 from black to white, stands for a linear amount of light.
 * Both directions take every finite number: above 1 a curve goes on by its own formula, below 0 it
 * is turned half a circle about its value at 0, which for a curve through the origin is the odd
 * extension of CSS Color 4. Double precision and {@link StrictMath}; pixels go through tables made
 * from it ({@link DecodeTable}, {@link DecodeCurve}, {@link EncodeCurve}).
 */
public sealed interface TransferCurve permits IdentityCurve, ParametricCurve, SampledCurve {
  /** The linear value of an encoded one. */
  double toLinear(double encoded);

  /**
   * The encoded value of a linear one: the inverse of {@link #toLinear}, and the least answer where
   * a level piece of the curve leaves a choice.
   */
  double toEncoded(double linear);

  /** Encoded is linear. */
  static TransferCurve identity() {
    return IdentityCurve.IDENTITY;
  }

  /**
   * {@code encoded^exponent}.
   *
   * @param exponent above 0
   */
  static TransferCurve gamma(double exponent) {
    return exponent == 1 ? identity() : new ParametricCurve(exponent, 1, 0, 0, 0, 0, 0);
  }

  /**
   * {@code (a·encoded + b)^exponent} from {@code join} on, {@code slope·encoded} below it.
   *
   * @param exponent above 0
   * @param a above 0
   */
  static TransferCurve gammaWithToe(
      double exponent, double a, double b, double slope, double join) {
    return new ParametricCurve(exponent, a, b, slope, join, 0, 0);
  }

  /**
   * Straight lines between samples at even steps, the first at 0 and the last at 1.
   *
   * @param samples at least 2, finite, the last above the first; copied
   */
  static TransferCurve sampled(double... samples) {
    return new SampledCurve(samples);
  }
}
