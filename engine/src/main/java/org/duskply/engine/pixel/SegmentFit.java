package org.duskply.engine.pixel;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/** Fits the cubics of {@link Segments}: one octave of the floats after the other. */
final class SegmentFit {
  private static final int FINEST = 8;
  private static final int FINEST_FOR_KNOTS = 9;
  private static final int NEAR = 64;
  private static final int UNSPLIT = Integer.MAX_VALUE;
  private static final int OCTAVES = 512;
  private static final int TOP_OCTAVE = 127 + 32;

  // Where a cubic through 0, ¼, ¾ and 1 strays farthest: ½ and ½ ± √(5/32).
  private static final double[] FARTHEST = {0.1047, 0.5, 0.8953};

  private final DoubleUnaryOperator curve;
  private final int[] knots; // bits of the first float of the piece farther from 0, sorted
  private final int[] octaves = new int[OCTAVES];
  private final double[] cubic = new double[4];
  private int[] splits = new int[1 << 10];
  private double[] first = new double[4 << 10];
  private double[] second = new double[4 << 10];
  private int count;

  SegmentFit(DoubleUnaryOperator curve, float[] knots) {
    this.curve = curve;
    int[] sorted = new int[knots.length];
    for (int i = 0; i < knots.length; i++) {
      sorted[i] = outward(knots[i]);
    }
    Arrays.sort(sorted);
    this.knots = apart(sorted);
  }

  /** Sorted knots without those too near the one before. */
  private static int[] apart(int[] sorted) {
    int kept = 0;
    for (int knot : sorted) {
      if (kept == 0 || (long) knot - sorted[kept - 1] >= NEAR) {
        sorted[kept++] = knot;
      }
    }
    return Arrays.copyOf(sorted, kept);
  }

  private static int outward(float knot) {
    return Float.floatToIntBits(knot > 0 ? knot : Math.nextDown(knot));
  }

  Segments segments() {
    for (int octave = 0; octave < OCTAVES; octave++) {
      if ((octave & 255) == 255) {
        fitNotFinite(octave);
      } else {
        fitOctave(octave);
      }
    }
    int[] seconds = new int[count];
    int length = 4 * count;
    for (int i = 0; i < count; i++) {
      if (splits[i] != UNSPLIT) {
        seconds[i] = length;
        length += 4;
      }
    }
    double[] cubics = Arrays.copyOf(first, length);
    for (int i = 0; i < count; i++) {
      if (splits[i] != UNSPLIT) {
        System.arraycopy(second, 4 * i, cubics, seconds[i], 4);
      }
    }
    return new Segments(octaves, Arrays.copyOf(splits, count), seconds, cubics);
  }

  private void fitOctave(int octave) {
    int begin = count;
    int exponent = octave & 255;
    boolean plain = exponent == 0 || exponent >= TOP_OCTAVE;
    int finest = plain ? 0 : FINEST_FOR_KNOTS; // held to FINEST by fitSegment where no knots crowd
    for (int fineness = 0; !divide(octave, fineness, finest); fineness++) {
      count = begin;
    }
  }

  /** Infinity, the first of its octave, counts as 2¹²⁸; all that follows is NaN and counts as 0. */
  private void fitNotFinite(int octave) {
    makeRoom();
    octaves[octave] = count << Segments.COUNT_BITS | 1;
    splits[count] = 1;
    fitCubic(octave << 23, 0, 0, 1, first, count);
    fitCubic(0, 0, 0, 1, second, count);
    count++;
  }

  /** Whether dividing the octave into 2^fineness segments will do. */
  private boolean divide(int octave, int fineness, int finest) {
    int segments = 1 << fineness;
    int width = 1 << 23 - fineness;
    octaves[octave] = count << Segments.COUNT_BITS | segments;
    for (int i = 0; i < segments; i++) {
      boolean good = fitSegment((octave << 23) + i * width, width, fineness);
      if (!good && fineness < finest) {
        return false;
      }
    }
    return true;
  }

  /** Adds the segment of {@code width} floats from {@code bits} on; whether it is good enough. */
  private boolean fitSegment(int bits, int width, int fineness) {
    makeRoom();
    int at = count++;
    int k = knotAfter(bits);
    boolean fineEnough = fineness >= FINEST;
    if (!inside(k, bits, width)) {
      splits[at] = UNSPLIT;
      return fitCubic(bits, 0, width, width, first, at) || fineEnough;
    }
    int split = knots[k] - bits;
    splits[at] = split << fineness;
    boolean below = fitCubic(bits, 0, split - 1, width, first, at);
    boolean above = fitCubic(bits, split, width, width, second, at);
    return !inside(k + 1, bits, width) && (below && above || fineEnough);
  }

  /** The first knot beyond the float of {@code bits}, as an index. */
  private int knotAfter(int bits) {
    int k = Arrays.binarySearch(knots, bits + 1);
    return k < 0 ? -1 - k : k;
  }

  private boolean inside(int k, int bits, int width) {
    return k < knots.length && (knots[k] ^ bits) >= 0 && knots[k] - bits < width;
  }

  /**
   * Fits the curve from {@code from} to {@code to} floats past {@code bits}, in a segment of {@code
   * width}; whether it came close.
   */
  private boolean fitCubic(int bits, int from, int to, int width, double[] into, int at) {
    int way = to - from;
    throughFour(
        value(bits, from),
        value(bits, from + 0.25 * way),
        value(bits, from + 0.75 * way),
        value(bits, to));
    boolean close = close(bits, from, way);
    double unit = way == 0 ? 0 : (double) width / way;
    double scale = 1;
    for (int power = 0; power < 4; power++) {
      into[4 * at + power] = cubic[power] * scale;
      scale *= unit;
    }
    return close;
  }

  /**
   * The cubic through four values at 0, ¼, ¾ and 1; or, where that would turn back though they do
   * not, through the first and the last with slopes that prevent it.
   */
  private void throughFour(double a, double b, double c, double d) {
    // Newton's divided differences, then powers.
    double ab = (b - a) * 4;
    double bc = (c - b) * 2;
    double cd = (d - c) * 4;
    double abc = (bc - ab) / 0.75;
    double bcd = (cd - bc) / 0.75;
    cubic[0] = a;
    cubic[3] = bcd - abc;
    cubic[2] = abc - cubic[3];
    cubic[1] = ab - 0.25 * abc + 0.1875 * cubic[3];
    boolean rises = a <= b && b <= c && c <= d;
    boolean falls = a >= b && b >= c && c >= d;
    if (rises && leastSlope(1) < 0 || falls && leastSlope(-1) < 0) {
      neverTurning(d - a);
    }
  }

  /**
   * Slopes at the ends from 0 to 3 times the rise: a cubic with such does not turn back (de Boor
   * and Swartz, J. Approx. Theory 21, 1977). A straight line would not either, but beside a flat
   * end it is some ten times farther from the curve.
   */
  private void neverTurning(double rise) {
    double begins = between(cubic[1], 3 * rise);
    double ends = between(cubic[1] + 2 * cubic[2] + 3 * cubic[3], 3 * rise);
    cubic[1] = begins;
    cubic[2] = 3 * rise - 2 * begins - ends;
    cubic[3] = begins + ends - 2 * rise;
  }

  /** {@code slope} held between 0 and {@code most}, which may be below 0. */
  private static double between(double slope, double most) {
    return Math.max(Math.min(0, most), Math.min(Math.max(0, most), slope));
  }

  /** The least slope on 0…1 of the cubic times {@code sign}. */
  private double leastSlope(int sign) {
    double line = sign * cubic[1];
    double square = sign * cubic[2];
    double atEnd = line + 2 * square + 3 * sign * cubic[3];
    double turn = -cubic[2] / (3 * cubic[3]);
    boolean turns = turn > 0 && turn < 1;
    return Math.min(Math.min(line, atEnd), turns ? line + square * turn : line);
  }

  private boolean close(int bits, int from, int way) {
    for (double s : FARTHEST) {
      double wanted = value(bits, from + s * way);
      double got = cubic[0] + s * (cubic[1] + s * (cubic[2] + s * cubic[3]));
      double bound = Math.max(Segments.ABSOLUTE, Segments.RELATIVE * Math.abs(wanted));
      if (!(Math.abs(got - wanted) <= bound)) {
        return false;
      }
    }
    return true;
  }

  /** The curve at {@code along} floats past the float of {@code bits}. */
  private double value(int bits, double along) {
    int exponent = bits >>> 23 & 255;
    double unit = StrictMath.scalb(1.0, Math.max(exponent, 1) - 150);
    double mantissa = (bits & 0x7fffff) + (exponent == 0 ? 0 : 1 << 23);
    double size = exponent == 255 ? 0x1p128 : (mantissa + along) * unit;
    double y = continued(bits < 0 ? -size : size);
    return Math.max(-Float.MAX_VALUE, Math.min(Float.MAX_VALUE, y));
  }

  private double continued(double x) {
    double end = x < 0 ? -Segments.TOP : Segments.TOP;
    if (Math.abs(x) <= Segments.TOP) {
      return curve.applyAsDouble(x);
    }
    double atEnd = curve.applyAsDouble(end);
    double slope = (atEnd - curve.applyAsDouble(end / 2)) / (end / 2);
    return atEnd + slope * (x - end);
  }

  private void makeRoom() {
    if (count == splits.length) {
      splits = Arrays.copyOf(splits, 2 * count);
      first = Arrays.copyOf(first, 8 * count);
      second = Arrays.copyOf(second, 8 * count);
    }
  }
}
