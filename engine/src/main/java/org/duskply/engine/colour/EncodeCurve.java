package org.duskply.engine.colour;

import org.duskply.engine.pixel.Segments;

/**
 * The encoding direction of a {@link TransferCurve} for pixels: linear float to encoded float, by
 * the cubics of {@link Segments}, with a knot wherever the curve has a corner. What a file's codes
 * decode to ({@link DecodeTable}) encodes to the same codes, for all 65,536 of each named space and
 * of every curve that rises without a gap; where the pieces of a file's curve miss each other, the
 * codes beside the gap may be one off.
 *
 * <p>Takes any float; below black and above white the curve goes on as {@link TransferCurve} says.
 * Nothing is clipped.
 */
public final class EncodeCurve {
  private final Segments segments;

  private EncodeCurve(Segments segments) {
    this.segments = segments;
  }

  /** Prepares a curve; some milliseconds of work. */
  public static EncodeCurve of(TransferCurve curve) {
    double black = curve.toLinear(0);
    double[] corners = corners(curve);
    float[] knots = new float[2 * corners.length];
    for (int i = 0; i < corners.length; i++) {
      knots[2 * i] = leastNotBelow(corners[i]);
      knots[2 * i + 1] = leastNotBelow(Math.nextUp(2 * black - corners[i]));
    }
    return new EncodeCurve(Segments.of(curve::toEncoded, knots));
  }

  /** Encodes the values from {@code from} up to {@code to} in place. */
  public void apply(float[] v, int from, int to) {
    segments.apply(v, from, to);
  }

  /** The encoded value of one linear value. */
  public float apply(float linear) {
    return segments.apply(linear);
  }

  private static double[] corners(TransferCurve curve) {
    if (curve instanceof ParametricCurve parametric) {
      return parametric.corners();
    }
    return curve instanceof SampledCurve sampled ? sampled.corners() : new double[0];
  }

  /** The least float that is not below {@code x}. */
  static float leastNotBelow(double x) {
    float rounded = (float) x;
    return rounded < x ? Math.nextUp(rounded) : rounded;
  }
}
