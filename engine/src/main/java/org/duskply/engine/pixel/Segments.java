package org.duskply.engine.pixel;

import java.util.function.DoubleUnaryOperator;

/**
 * A curve from float to float, prepared as short cubics: the one way in which transfer curves, tone
 * curves and contrast reach the pixels.
 *
 * <p>Sign and exponent of the value choose an octave; each octave is divided evenly into as few
 * segments as its shape needs (1 to 256, to 512 where knots crowd), chosen by the leading bits of
 * the mantissa; the rest of the mantissa is the variable of the segment's cubic, 0 to 1, evaluated
 * in double. A knot, a value where one formula takes over from another, divides its segment once
 * more, so that a corner stays a corner.
 *
 * <p>Each cubic agrees with the curve to {@link #RELATIVE} or {@link #ABSOLUTE}, whichever is
 * wider, before the one rounding to float; cubics meet at their ends, and a curve that does not
 * turn back is never made to. From {@link #TOP} in size on, the curve goes on as the straight line
 * of its last octave, held to the greatest float. Any float gives a finite result: an infinity
 * counts as 2¹²⁸, NaN as 0.
 *
 * <p>Three limits, below what can be seen: the least octave, under 2⁻¹²⁶, is one cubic; of knots
 * within 64 floats of each other the first counts; so it does of two within 1/512 of an octave, one
 * cubic standing for what follows.
 */
public final class Segments {
  /** How far a cubic may be from the curve, as a share of the curve's value. */
  public static final double RELATIVE = 0x1p-25;

  /** How far a cubic may be from the curve where that is wider than {@link #RELATIVE}. */
  public static final double ABSOLUTE = 0x1p-34;

  /** The size from which on the curve is continued as a straight line. */
  public static final float TOP = 0x1p32f;

  /** In {@link #octaves}, the low bits that hold the number of segments. */
  static final int COUNT_BITS = 10;

  private static final int MANTISSA = 0x007fffff;
  private static final int COUNT = (1 << COUNT_BITS) - 1;

  private final int[] octaves; // of 512: first segment, then how many
  private final int[] splits; // of a segment: where in it, of 2²³, its second cubic takes over
  private final int[] seconds; // of a segment that is split: index of its second cubic
  private final double[] cubics; // four coefficients each, constant first

  Segments(int[] octaves, int[] splits, int[] seconds, double[] cubics) {
    this.octaves = octaves;
    this.splits = splits;
    this.seconds = seconds;
    this.cubics = cubics;
  }

  /**
   * Prepares a curve.
   *
   * @param curve defined for every number in size up to {@link #TOP}, smooth between knots
   * @param knots each the least float of the piece above it, in any order
   */
  public static Segments of(DoubleUnaryOperator curve, float... knots) {
    return new SegmentFit(curve, knots).segments();
  }

  /** Applies the curve to values {@code from} up to {@code to}. */
  public void apply(float[] v, int from, int to) {
    // In locals, so that the loop need not fetch them again after each store.
    int[] octaves = this.octaves;
    int[] splits = this.splits;
    int[] seconds = this.seconds;
    double[] cubics = this.cubics;
    for (int i = from; i < to; i++) {
      v[i] = at(v[i], octaves, splits, seconds, cubics);
    }
  }

  /** The curve at {@code x}. */
  public float apply(float x) {
    return at(x, octaves, splits, seconds, cubics);
  }

  private static float at(float x, int[] octaves, int[] splits, int[] seconds, double[] cubics) {
    int bits = Float.floatToRawIntBits(x);
    int octave = octaves[bits >>> 23];
    // Mantissa times count: whole part the segment in the octave, 23 bits of fraction the way
    // along it.
    int place = (bits & MANTISSA) * (octave & COUNT);
    int segment = (octave >>> COUNT_BITS) + (place >>> 23);
    int along = place & MANTISSA;
    int at = 4 * segment;
    if (along >= splits[segment]) {
      along -= splits[segment];
      at = seconds[segment];
    }
    // By bits, because the machine's conversion from int waits for the value before.
    double t = Double.longBitsToDouble(0x3ff0000000000000L | (long) along << 29) - 1;
    return (float) (cubics[at] + t * (cubics[at + 1] + t * (cubics[at + 2] + t * cubics[at + 3])));
  }

  /** Bytes that the tables take. */
  public int bytes() {
    return Integer.BYTES * (octaves.length + 2 * splits.length) + Double.BYTES * cubics.length;
  }
}
