package org.duskply.engine.deliver;

import java.util.Arrays;

/**
 * Makes a dither array: R. Ulichney, "The void-and-cluster method for dither array generation",
 * Proc. SPIE 1913 (1993), on a torus of {@code side × side} with a Gaussian of σ = 1.5. Weights are
 * whole numbers, so that sums are exact and the same everywhere; of equals the first counts.
 */
final class VoidAndCluster {
  private static final double SIGMA = 1.5;
  private static final double UNIT = 0x1p40;

  private final int side;
  private final long[] weight;
  private final boolean[] lit;
  private final long[] energy;

  private VoidAndCluster(int side) {
    this.side = side;
    this.weight = new long[side * side];
    this.lit = new boolean[side * side];
    this.energy = new long[side * side];
    for (int i = 0; i < weight.length; i++) {
      int x = Math.min(i % side, side - i % side);
      int y = Math.min(i / side, side - i / side);
      weight[i] =
          (long) StrictMath.floor(UNIT * StrictMath.exp(-(x * x + y * y) / (2 * SIGMA * SIGMA)));
    }
  }

  /** The ranks, row by row: 0 is lit first. */
  static int[] ranks(int side) {
    VoidAndCluster square = new VoidAndCluster(side);
    int first = square.start();
    int[] ranks = new int[side * side];
    boolean[] prototype = square.lit.clone();
    long[] itsEnergy = square.energy.clone();
    for (int rank = first - 1; rank >= 0; rank--) {
      int at = square.tightestCluster();
      square.turn(at, false);
      ranks[at] = rank;
    }
    System.arraycopy(prototype, 0, square.lit, 0, prototype.length);
    System.arraycopy(itsEnergy, 0, square.energy, 0, itsEnergy.length);
    // From one half on the paper looks for the tightest cluster of dark pixels. On a torus the
    // energies of light and dark have one sum everywhere, so that is the largest void of light.
    for (int rank = first; rank < ranks.length; rank++) {
      int at = square.largestVoid();
      square.turn(at, true);
      ranks[at] = rank;
    }
    return ranks;
  }

  /** The prototype: a tenth of the pixels lit at random, then moved until they lie evenly. */
  private int start() {
    int count = side * side / 10;
    int state = 1;
    for (int n = 0; n < count; ) {
      state = state * 1664525 + 1013904223; // a linear congruential generator
      int at = (state >>> 8) % lit.length;
      if (!lit[at]) {
        turn(at, true);
        n++;
      }
    }
    while (true) {
      int cluster = tightestCluster();
      turn(cluster, false);
      int hole = largestVoid();
      turn(hole, true);
      if (hole == cluster) {
        return count;
      }
    }
  }

  private void turn(int at, boolean on) {
    lit[at] = on;
    int x = at % side;
    int y = at / side;
    for (int i = 0; i < energy.length; i++) {
      int dx = (i % side - x + side) % side;
      int dy = (i / side - y + side) % side;
      long w = weight[dy * side + dx];
      energy[i] += on ? w : -w;
    }
  }

  private int tightestCluster() {
    int best = -1;
    for (int i = 0; i < lit.length; i++) {
      if (lit[i] && (best < 0 || energy[i] > energy[best])) {
        best = i;
      }
    }
    return best;
  }

  private int largestVoid() {
    int best = -1;
    for (int i = 0; i < lit.length; i++) {
      if (!lit[i] && (best < 0 || energy[i] < energy[best])) {
        best = i;
      }
    }
    return best;
  }

  /** The text of the resource. */
  static String text(int[] ranks, int side) {
    StringBuilder text = new StringBuilder();
    for (int y = 0; y < side; y++) {
      String row = Arrays.toString(Arrays.copyOfRange(ranks, y * side, (y + 1) * side));
      text.append(row, 1, row.length() - 1).append('\n');
    }
    return text.toString().replace(",", "");
  }
}
