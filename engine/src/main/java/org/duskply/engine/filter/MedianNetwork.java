package org.duskply.engine.filter;

import java.util.ArrayList;
import java.util.List;

/**
 * The comparisons that bring the median of 5 × 5 values to one place, whatever the values: pairs of
 * places of which the lesser value goes to the first.
 *
 * <ol>
 *   <li>Each column of five is sorted downward, then each row of five to the right, which leaves
 *       the columns sorted.
 *   <li>The value in row i, column j (from 0) then has (i + 1)(j + 1) − 1 others that are not
 *       greater and (5 − i)(5 − j) − 1 that are not less. Where either is more than 12 it is not
 *       needed as the median; thirteen places are left, six having gone on either side, and the
 *       median of the whole is theirs.
 *   <li>Of eight of the thirteen, neither the least nor the greatest is their median, for it has
 *       seven on one side. Both are let go and a ninth is taken in; then of seven, of six … until
 *       the last three leave one.
 * </ol>
 *
 * <p>By the zero-one principle (Knuth, The Art of Computer Programming 3, 5.3.4) a network that
 * does so for all 2²⁵ patterns of zeros and ones does so for all values; the test asks every one.
 */
final class MedianNetwork {
  /** Values along a side. */
  static final int SIDE = 5;

  /** Sorts five; nine comparisons, the fewest. */
  static final int[][] SORT = {
    {0, 1}, {3, 4}, {2, 4}, {2, 3}, {1, 4}, {0, 3}, {0, 2}, {1, 3}, {1, 2}
  };

  private static final int HALF = SIDE * SIDE / 2;

  /** Places, {@code 5·row + column}, of the comparisons after both sorts. */
  static final int[][] SELECT;

  /** Where the median stands after {@link #SELECT}. */
  static final int MEDIAN;

  static {
    List<int[]> pairs = new ArrayList<>();
    List<Integer> waiting = candidates();
    List<Integer> live = new ArrayList<>(waiting.subList(0, waiting.size() / 2 + 2));
    waiting.subList(0, live.size()).clear();
    while (live.size() > 1) {
      extremesOutward(live, pairs);
      live.remove(live.size() - 1);
      live.remove(0);
      if (!waiting.isEmpty()) {
        live.add(waiting.remove(0));
      }
    }
    SELECT = pairs.toArray(int[][]::new);
    MEDIAN = live.get(0);
  }

  private MedianNetwork() {}

  private static List<Integer> candidates() {
    List<Integer> candidates = new ArrayList<>();
    for (int i = 0; i < SIDE; i++) {
      for (int j = 0; j < SIDE; j++) {
        if ((i + 1) * (j + 1) - 1 <= HALF && (SIDE - i) * (SIDE - j) - 1 <= HALF) {
          candidates.add(SIDE * i + j);
        }
      }
    }
    return candidates;
  }

  /** Brings the least to the first place of {@code live} and the greatest to the last. */
  private static void extremesOutward(List<Integer> live, List<int[]> pairs) {
    int count = live.size();
    for (int i = 0; i < count / 2; i++) {
      pairs.add(new int[] {live.get(i), live.get(count - 1 - i)});
    }
    for (int i = 1; i < (count + 1) / 2; i++) {
      pairs.add(new int[] {live.get(0), live.get(i)});
    }
    for (int i = count / 2; i < count - 1; i++) {
      pairs.add(new int[] {live.get(i), live.get(count - 1)});
    }
  }
}
