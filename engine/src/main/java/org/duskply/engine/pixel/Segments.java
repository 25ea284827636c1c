package org.duskply.engine.pixel;

import java.util.function.DoubleUnaryOperator;

/**
 * A curve from float to float, prepared as short cubics: the one way in which transfer curves, tone
 * curves and contrast reach the pixels.
 *
 * <p>Sign and exponent of the value choose an octave; each octave is divided evenly into as few
 * segments as its shape needs (2⁰ to 2⁸, to 2¹⁰ where knots crowd), chosen by the leading bits of
 * the mantissa; the rest of the mantissa is the variable of the segment's cubic, evaluated in
 * double. A knot, a value where one formula takes over from another, divides its segment once more,
 * so that a corner stays a corner.
 *
 * <p>Each cubic agrees with the curve to {@link #RELATIVE} or {@link #ABSOLUTE}, whichever is
 * wider, before the one rounding to float; cubics meet at their ends, and a curve that does not
 * fall is never made to. From {@link #TOP} in size on, the curve goes on as the straight line of
 * its last octave, held to the greatest float. Two knots in one 1/1024 of an octave count as the
 * first of them. The least octave, below 2⁻¹²⁶, is one cubic. Any float gives a finite result
 * without branch or trap; infinities and NaN count as 2¹²⁸.
 */
public final class Segments {
  /** How far a cubic may be from the curve, as a share of the curve's value. */
  public static final double RELATIVE = 0x1p-25;

  /** How far a cubic may be from the curve where that is wider than {@link #RELATIVE}. */
  public static final double ABSOLUTE = 0x1p-34;

  /** The size from which on the curve is continued as a straight line. */
  public static final float TOP = 0x1p32f;

  private static final int MANTISSA = 0x007fffff;

  private final int[] octaves; // of 512: first segment · 32 + bits of the mantissa left over
  private final int[] splits; // of a segment: where in it the second cubic takes over
  private final double[] cubics; // four coefficients a segment, then as many of second cubics
  private final int second; // how far on the second cubics are

  Segments(int[] octaves, int[] splits, double[] cubics) {
    this.octaves = octaves;
    this.splits = splits;
    this.cubics = cubics;
    this.second = cubics.length > 4 * splits.length ? 4 * splits.length : 0;
  }

  /**
   * Prepares a curve.
   *
   * @param curve defined for every float in size below {@link #TOP}, smooth between knots
   * @param knots each the least float of the piece above it, in any order
   */
  public static Segments of(DoubleUnaryOperator curve, float... knots) {
    return new SegmentFit(curve, knots).segments();
  }

  /** Applies the curve to values {@code from} up to {@code to}. */
  public void apply(float[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      v[i] = apply(v[i]);
    }
  }

  /** The curve at {@code x}. */
  public float apply(float x) {
    int bits = Float.floatToRawIntBits(x);
    int octave = octaves[bits >>> 23];
    int mantissa = bits & MANTISSA;
    int segment = (octave >>> 5) + (mantissa >>> octave); // the shift takes its low five bits
    int along = mantissa & ~(-1 << octave);
    int at = 4 * segment;
    if (along >= splits[segment]) {
      along -= splits[segment];
      at += second;
    }
    double t = along;
    return (float) (cubics[at] + t * (cubics[at + 1] + t * (cubics[at + 2] + t * cubics[at + 3])));
  }

  /** Bytes that the tables take. */
  public int bytes() {
    return Integer.BYTES * (octaves.length + splits.length) + Double.BYTES * cubics.length;
  }
}
