package org.duskply.engine.pixel;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/** Fits the cubics of {@link Segments}: one octave of the floats after the other. */
final class SegmentFit {
  private static final int FINEST = 8;
  private static final int FINEST_FOR_KNOTS = 10;
  private static final int UNSPLIT = Integer.MAX_VALUE;
  private static final int OCTAVES = 512;
  private static final int TOP_OCTAVE = 127 + 32;

  // Where a cubic through 0, ¼, ¾ and 1 strays farthest: ½ and ½ ± √(5/32).
  private static final double[] FARTHEST = {0.1047, 0.5, 0.8953};

  private final DoubleUnaryOperator curve;
  private final int[] knots; // bits of the first float of the piece farther from 0, sorted
  private final int[] octaves = new int[OCTAVES];
  private int[] splits = new int[1 << 10];
  private double[] first = new double[1 << 12];
  private double[] second = new double[1 << 12];
  private int count;
  private boolean anySplit;

  SegmentFit(DoubleUnaryOperator curve, float[] knots) {
    this.curve = curve;
    this.knots =
        IntStream.range(0, knots.length).map(i -> outward(knots[i])).sorted().distinct().toArray();
  }

  private static int outward(float knot) {
    return Float.floatToIntBits(knot > 0 ? knot : Math.nextDown(knot));
  }

  Segments segments() {
    for (int octave = 0; octave < OCTAVES; octave++) {
      fitOctave(octave);
    }
    double[] cubics = Arrays.copyOf(first, anySplit ? 8 * count : 4 * count);
    if (anySplit) {
      System.arraycopy(second, 0, cubics, 4 * count, 4 * count);
    }
    return new Segments(octaves, Arrays.copyOf(splits, count), cubics);
  }

  private void fitOctave(int octave) {
    int begin = count;
    int exponent = octave & 255;
    boolean plain = exponent == 0 || exponent >= TOP_OCTAVE;
    int finest = plain ? 0 : FINEST_FOR_KNOTS;
    for (int fineness = 0; !divide(octave, fineness, finest); fineness++) {
      count = begin;
    }
  }

  /** Whether dividing the octave into 2^fineness segments will do. */
  private boolean divide(int octave, int fineness, int finest) {
    int left = 23 - fineness;
    octaves[octave] = count << 5 | left;
    for (int i = 0; i < 1 << fineness; i++) {
      boolean good = fitSegment(octave << 23 | i << left, 1 << left);
      if (!good && fineness < finest) {
        return false;
      }
    }
    return true;
  }

  /** Adds the segment of {@code width} floats from {@code bits} on; whether it is good enough. */
  private boolean fitSegment(int bits, int width) {
    makeRoom();
    int at = count++;
    int k = Arrays.binarySearch(knots, bits + 1);
    k = k < 0 ? -1 - k : k;
    boolean split = k < knots.length && knots[k] - bits < width && (knots[k] ^ bits) >= 0;
    splits[at] = split ? knots[k] - bits : UNSPLIT;
    if (!split) {
      return fitCubic(bits, 0, width, first, 4 * at) || width <= 1 << 23 - FINEST;
    }
    anySplit = true;
    boolean alone =
        k + 1 == knots.length || knots[k + 1] - bits >= width || (knots[k + 1] ^ bits) < 0;
    boolean below = fitCubic(bits, 0, splits[at] - 1, first, 4 * at);
    boolean above = fitCubic(bits, splits[at], width, second, 4 * at);
    return alone && (below && above || width <= 1 << 23 - FINEST);
  }

  /**
   * The cubic through the curve at 0, ¼, ¾ and 1 of the way {@code from … to} past {@code bits};
   * or, where that would fall though the curve does not, through 0 and 1 with slopes that prevent
   * it.
   */
  private boolean fitCubic(int bits, int from, int to, double[] into, int at) {
    int way = to - from;
    double a = value(bits, from);
    double b = value(bits, from + 0.25 * way);
    double c = value(bits, from + 0.75 * way);
    double d = value(bits, to);
    // Newton's divided differences, then powers of s = 0…1.
    double ab = (b - a) * 4;
    double bc = (c - b) * 2;
    double cd = (d - c) * 4;
    double abc = (bc - ab) / 0.75;
    double bcd = (cd - bc) / 0.75;
    double cubic = bcd - abc;
    double square = abc - cubic;
    double line = ab - 0.25 * abc + 0.1875 * cubic;
    boolean rising = a <= b && b <= c && c <= d;
    if (rising && falls(line, square, cubic)) {
      // Ends with slopes from 0 to 3 times the secant: such a cubic does not fall (de Boor and
      // Swartz 1977).
      double rise = d - a;
      double slopeAtEnd = within(line + 2 * square + 3 * cubic, 3 * rise);
      line = within(line, 3 * rise);
      square = 3 * rise - 2 * line - slopeAtEnd;
      cubic = line + slopeAtEnd - 2 * rise;
    }
    double unit = way == 0 ? 0 : 1d / way; // a single float needs no more than its value
    into[at] = a;
    into[at + 1] = line * unit;
    into[at + 2] = square * unit * unit;
    into[at + 3] = cubic * unit * unit * unit;
    return close(bits, from, way, a, line, square, cubic);
  }

  private static double within(double slope, double most) {
    return Math.max(0, Math.min(most, slope));
  }

  /** Whether {@code line·s + square·s² + cubic·s³} falls anywhere on 0…1. */
  private static boolean falls(double line, double square, double cubic) {
    double turn = -square / (3 * cubic);
    boolean turns = turn > 0 && turn < 1;
    return line < 0 || line + 2 * square + 3 * cubic < 0 || turns && line + square * turn < 0;
  }

  private boolean close(
      int bits, int from, int way, double a, double line, double square, double cubic) {
    for (double s : FARTHEST) {
      double wanted = value(bits, from + s * way);
      double got = a + s * (line + s * (square + s * cubic));
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
