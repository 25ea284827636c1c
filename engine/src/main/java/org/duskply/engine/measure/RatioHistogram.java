package org.duskply.engine.measure;

/**
 * How often each ratio of two frames' light occurs, in stops. Ratios are counted in whole numbers,
 * in bins of 1/1024 stop from −20 to 20 stops; ratios beyond that are left out.
 *
 * <p>The {@linkplain #peak peak} is the ratio that most of the counted places agree on, however the
 * rest is strewn: sixteen fine bins make one of 1/64 stop, the coarse counts are smoothed (1, 2, 3,
 * 2, 1), the greatest (of equals the lowest) is the coarse answer, and the median of all fine
 * counts within ±1/8 stop of it the fine one. A frame that a flash lights in places keeps the peak
 * of the places that it does not reach.
 */
public final class RatioHistogram {
  /** Largest ratio that is counted, in stops, up or down. */
  public static final int MOST_STOPS = 20;

  /** Fine bins a stop. */
  static final int FINE = 1024;

  private static final int COARSE = 64;
  private static final int MERGED = FINE / COARSE;
  private static final int REACH = FINE / 8;
  private static final int[] SMOOTH = {1, 2, 3, 2, 1};

  private final int[] counts = new int[2 * MOST_STOPS * FINE];
  private int total;

  /**
   * A ratio on which many places agree.
   *
   * @param stops the ratio
   * @param share of all counted places that lie within ±1/8 stop of the coarse peak, 0 to 1
   */
  public record Peak(double stops, double share) {}

  /** Counts a ratio; NaN is left out. */
  public void add(double stops) {
    double bin = Math.floor((stops + MOST_STOPS) * FINE);
    if (bin >= 0 && bin < counts.length) {
      counts[(int) bin]++;
      total++;
    }
  }

  /** How many ratios were counted. */
  public int total() {
    return total;
  }

  /**
   * The ratio that most places agree on.
   *
   * @throws IllegalStateException if nothing was counted
   */
  public Peak peak() {
    if (total == 0) {
      throw new IllegalStateException("Nothing was counted");
    }
    int centre = greatest(coarse()) * MERGED + MERGED / 2;
    int from = Math.max(0, centre - REACH);
    int to = Math.min(counts.length, centre + REACH);
    long inside = 0;
    for (int i = from; i < to; i++) {
      inside += counts[i];
    }
    return new Peak(median(from, inside), (double) inside / total);
  }

  private int[] coarse() {
    int[] coarse = new int[counts.length / MERGED];
    for (int i = 0; i < counts.length; i++) {
      coarse[i / MERGED] += counts[i];
    }
    return coarse;
  }

  private static int greatest(int[] coarse) {
    int best = 0;
    long most = -1;
    for (int i = 0; i < coarse.length; i++) {
      long sum = 0;
      for (int k = 0; k < SMOOTH.length; k++) {
        int at = i + k - SMOOTH.length / 2;
        if (at >= 0 && at < coarse.length) {
          sum += (long) SMOOTH[k] * coarse[at];
        }
      }
      if (sum > most) {
        most = sum;
        best = i;
      }
    }
    return best;
  }

  /** The middle of the bin that holds the median of {@code inside} counts from {@code from} on. */
  private double median(int from, long inside) {
    long left = (inside + 1) / 2;
    int bin = from;
    while (left > counts[bin]) {
      left -= counts[bin++];
    }
    return (bin + 0.5) / FINE - MOST_STOPS;
  }
}
