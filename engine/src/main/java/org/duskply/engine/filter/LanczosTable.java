package org.duskply.engine.filter;

import java.util.Arrays;

/**
 * Which samples of a line each sample of a longer or shorter line is made from, and how much each
 * counts. Prepared in double, immutable.
 *
 * <p>Sample x of {@code to} looks at u = (x + ½)·from/to − ½, rounded to 1/1024; sample k counts by
 * L((k − u)/s) over the sum of all, with L(t) = sinc t · sinc(t/3) for |t| &lt; 3 (Duchon 1979),
 * sinc t = sin πt/πt, and s = max(1, from/to), so that the kernel is as wide as the samples that
 * are made. Samples beyond the line count for the one at its end.
 */
final class LanczosTable {
  static final int PHASES = 1024;
  private static final int LOBES = 3;

  // Below this a weight is what rounding leaves of sin π.
  private static final double NOTHING = 1e-12;

  private final int from;
  private final int[] first;
  private final int[] nearest;
  private final int[] lobeFirst;
  private final int[] lobeLast;
  // The weights of sample x begin here, those of x + 1 end them.
  private final int[] starts;
  private final float[] weights;

  private LanczosTable(int from, int to) {
    this.from = from;
    double wide = Math.max(1, (double) from / to);
    first = new int[to];
    nearest = new int[to];
    lobeFirst = new int[to];
    lobeLast = new int[to];
    starts = new int[to + 1];
    double[] line = new double[(int) (2 * LOBES * wide) + 2];
    float[] all = new float[Math.multiplyExact(to, line.length)];
    for (int x = 0; x < to; x++) {
      double at = ((2.0 * x + 1) * from) / (2.0 * to) - 0.5;
      at = Math.rint(at * PHASES) / PHASES;
      first[x] = (int) Math.ceil(at - LOBES * wide);
      int count = weigh(line, first[x], at, wide);
      int blank = trimmed(line, count);
      starts[x + 1] = starts[x] + count - blank;
      first[x] += blank;
      for (int i = blank; i < count; i++) {
        all[starts[x] + i - blank] = (float) line[i];
      }
      nearest[x] = (int) Math.ceil(at - 0.5);
      lobeFirst[x] = (int) Math.floor(at - wide) + 1;
      lobeLast[x] = (int) Math.ceil(at + wide) - 1;
    }
    weights = Arrays.copyOf(all, starts[to]);
  }

  /** The table for a line of {@code from} samples made into one of {@code to}; both at least 1. */
  static LanczosTable of(int from, int to) {
    return new LanczosTable(from, to);
  }

  /** Fills {@code line} with normalised weights; how many, without those of 0 at the end. */
  private static int weigh(double[] line, int first, double at, double wide) {
    int count = 0;
    double sum = 0;
    for (int k = first; k <= at + LOBES * wide; k++) {
      double weight = lanczos((k - at) / wide);
      line[k - first] = weight;
      sum += weight;
      count = Math.abs(weight) > NOTHING ? k - first + 1 : count;
    }
    for (int i = 0; i < count; i++) {
      line[i] = Math.abs(line[i]) > NOTHING ? line[i] / sum : 0;
    }
    return count;
  }

  /** How many weights of 0 the line begins with. */
  private static int trimmed(double[] line, int count) {
    int blank = 0;
    while (blank < count && line[blank] == 0) {
      blank++;
    }
    return blank;
  }

  /** The kernel. */
  static double lanczos(double t) {
    if (t == 0) {
      return 1;
    }
    if (Math.abs(t) >= LOBES) {
      return 0;
    }
    double angle = Math.PI * t;
    return LOBES * StrictMath.sin(angle) * StrictMath.sin(angle / LOBES) / (angle * angle);
  }

  /** How many samples count for sample {@code x}. */
  int count(int x) {
    return starts[x + 1] - starts[x];
  }

  /** The place in the line of the {@code i}-th of them. */
  int place(int x, int i) {
    return held(first[x] + i);
  }

  float weight(int x, int i) {
    return weights[starts[x] + i];
  }

  /** The place of the sample nearest to what {@code x} looks at. */
  int nearest(int x) {
    return held(nearest[x]);
  }

  /** The place of the first sample under the kernel's main lobe, |t| &lt; 1. */
  int lobeFirst(int x) {
    return held(lobeFirst[x]);
  }

  /** The place of the last. */
  int lobeLast(int x) {
    return held(lobeLast[x]);
  }

  /** The first place that samples {@code x} up to {@code to} are made from. */
  int begin(int x, int to) {
    int begin = from;
    for (int i = x; i < to; i++) {
      begin = Math.min(begin, Math.min(place(i, 0), lobeFirst(i)));
    }
    return begin;
  }

  /** One past the last place that samples {@code x} up to {@code to} are made from. */
  int end(int x, int to) {
    int last = 0;
    for (int i = x; i < to; i++) {
      last = Math.max(last, Math.max(place(i, count(i) - 1), lobeLast(i)));
    }
    return last + 1;
  }

  /** The most places that {@code run} neighbours among {@code x} up to {@code to} are made from. */
  int most(int x, int to, int run) {
    int most = 0;
    for (int i = x; i < to; i += run) {
      int end = Math.min(to, i + run);
      most = Math.max(most, end(i, end) - begin(i, end));
    }
    return most;
  }

  private int held(int place) {
    return Math.max(0, Math.min(from - 1, place));
  }
}
