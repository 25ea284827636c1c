package org.duskply.engine.mask;

import java.util.Arrays;

/**
 * Cuts a row of pixels into slabs in which no two edges cross and none ends, and hands on the
 * pieces of line that bound the inside. The scratch of one fill; not thread-safe.
 *
 * <p>Inside a slab the edges have an order from left to right, winding numbers follow from it, and
 * only the pieces where inside and outside meet are handed on: so outlines that cross themselves or
 * each other come out by their fill rule, exactly. The cuts are the ends of edges and their
 * crossings; both are found from the edges of this row alone, the same for any columns asked for.
 *
 * <p>Where edges of one row cross so often that this would take more than {@link #MOST_WORK} (as in
 * a scribble of thousands of lines), the row is cut into {@link #EVEN_SLABS} even slabs instead,
 * edges ordered as at the middle of each: a bounded time for an area that is then off by at most
 * the triangles between a crossing and the middle of its slab.
 */
final class RowSlabs {
  static final int MOST_WORK = 1 << 17;
  static final int EVEN_SLABS = 64;

  // Edges that come this near without parting again count as touching, not crossing.
  private static final double TOUCH = 1e-9;

  private final EdgeTable edges;
  private final boolean[] evenOdd;
  private final RowCoverage coverage;

  /** The winding number of each shape; all 0 between slabs. */
  private final int[] wound;

  private int[] edge = new int[16];
  private double[] from = new double[16];
  private double[] to = new double[16];
  private double[] enters = new double[16];
  private double[] slope = new double[16];
  private double[] high = new double[16];
  private double[] low = new double[16];
  private double[] key = new double[16];
  private int[] waiting = new int[16];
  private int[] active = new int[16];
  private int[] byTop = new int[16];
  private double[] cuts = new double[34];
  private double[] crossings = new double[16];
  private int activeCount;
  private int crossingCount;
  private long work;

  RowSlabs(EdgeTable edges, boolean[] evenOdd, RowCoverage coverage) {
    this.edges = edges;
    this.evenOdd = evenOdd;
    this.coverage = coverage;
    this.wound = new int[evenOdd.length];
  }

  /** Hands on row {@code y}; whether anything touches it. */
  boolean cover(int y) {
    int count = edges.gather(y, y + 1, edge);
    if (count > edge.length) {
      grow(count);
      edges.gather(y, y + 1, edge);
    }
    if (count == 0) {
      return false;
    }
    for (int slot = 0; slot < count; slot++) {
      from[slot] = Math.max(0, edges.topY[edge[slot]] - y);
      to[slot] = Math.min(1, edges.bottomY[edge[slot]] - y);
      enters[slot] = edges.xAt(edge[slot], y, from[slot]);
      slope[slot] = edges.slope[edge[slot]];
      waiting[slot] = slot;
    }
    sort(waiting, count, from);
    if (!walk(count, cutsAtEnds(count), true)) {
      coverage.clear();
      walk(count, evenCuts(), false);
    }
    return true;
  }

  private void grow(int count) {
    int size = Math.max(count, 2 * edge.length);
    edge = new int[size];
    from = new double[size];
    to = new double[size];
    enters = new double[size];
    slope = new double[size];
    high = new double[size];
    low = new double[size];
    key = new double[size];
    waiting = new int[size];
    active = new int[size];
    byTop = new int[size];
    cuts = new double[2 * size + 2];
  }

  private int cutsAtEnds(int count) {
    int n = 0;
    cuts[n++] = 0;
    cuts[n++] = 1;
    for (int slot = 0; slot < count; slot++) {
      if (from[slot] > 0) {
        cuts[n++] = from[slot];
      }
      if (to[slot] < 1) {
        cuts[n++] = to[slot];
      }
    }
    return n == 2 ? 2 : sortedWithoutRepeats(cuts, n);
  }

  private int evenCuts() {
    if (cuts.length <= EVEN_SLABS) {
      cuts = new double[EVEN_SLABS + 1];
    }
    for (int i = 0; i <= EVEN_SLABS; i++) {
      cuts[i] = (double) i / EVEN_SLABS;
    }
    return EVEN_SLABS + 1;
  }

  private static int sortedWithoutRepeats(double[] values, int count) {
    Arrays.sort(values, 0, count);
    int kept = 1;
    for (int i = 1; i < count; i++) {
      if (values[i] != values[kept - 1]) {
        values[kept++] = values[i];
      }
    }
    return kept;
  }

  /** Goes down the slabs between the cuts; false where it would take too much work. */
  private boolean walk(int count, int cutCount, boolean exact) {
    work = 0;
    activeCount = 0;
    int next = 0;
    for (int c = 1; c < cutCount; c++) {
      double top = cuts[c - 1];
      double bottom = cuts[c];
      double middle = 0.5 * (top + bottom);
      while (next < count && from[waiting[next]] <= middle) {
        active[activeCount++] = waiting[next++];
      }
      retire(middle);
      place(top, bottom);
      if (!exact || !crossed()) {
        hand(bottom - top);
      } else if (!split(top, bottom)) {
        return false;
      }
      work += activeCount;
      if (exact && work > MOST_WORK) {
        return false;
      }
    }
    return true;
  }

  private void retire(double middle) {
    int kept = 0;
    for (int i = 0; i < activeCount; i++) {
      if (to[active[i]] > middle) {
        active[kept++] = active[i];
      }
    }
    activeCount = kept;
  }

  /** Where the active edges enter and leave a slab, and their order at its middle. */
  private void place(double top, double bottom) {
    for (int i = 0; i < activeCount; i++) {
      int slot = active[i];
      // Held to the edge's own ends, which even slabs may reach beyond.
      double start = from[slot];
      high[slot] = enters[slot] + (Math.max(top, start) - start) * slope[slot];
      low[slot] = enters[slot] + (Math.min(bottom, to[slot]) - start) * slope[slot];
      key[slot] = high[slot] + low[slot];
    }
    sort(active, activeCount, key);
  }

  /** Whether an active edge passes another between the slab's top and bottom. */
  private boolean crossed() {
    double highest = Double.NEGATIVE_INFINITY;
    double lowest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < activeCount; i++) {
      int slot = active[i];
      if (high[slot] < highest - TOUCH || low[slot] < lowest - TOUCH) {
        return true;
      }
      highest = Math.max(highest, high[slot]);
      lowest = Math.max(lowest, low[slot]);
    }
    return false;
  }

  /** Cuts a slab once more where its edges cross; false where they cross too often. */
  private boolean split(double top, double bottom) {
    if (!findCrossings(top, bottom)) {
      return false;
    }
    int count = crossingCount == 0 ? 0 : sortedWithoutRepeats(crossings, crossingCount);
    work += (long) count * activeCount;
    if (work > MOST_WORK) {
      return false;
    }
    double above = top;
    for (int i = 0; i <= count; i++) {
      double below = i < count ? crossings[i] : bottom;
      place(above, below);
      hand(below - above);
      above = below;
    }
    return true;
  }

  /**
   * Sorts the edges, in order at the top, by their order at the bottom: each exchange is a
   * crossing.
   */
  private boolean findCrossings(double top, double bottom) {
    System.arraycopy(active, 0, byTop, 0, activeCount);
    sort(byTop, activeCount, high);
    crossingCount = 0;
    for (int i = 1; i < activeCount; i++) {
      int moved = byTop[i];
      int at = i;
      while (at > 0 && low[byTop[at - 1]] > low[moved]) {
        int passed = byTop[at - 1];
        crossing(passed, moved, top, bottom);
        byTop[at--] = passed;
        if (++work > MOST_WORK) {
          return false;
        }
      }
      byTop[at] = moved;
    }
    return true;
  }

  private void crossing(int a, int b, double top, double bottom) {
    double apartAbove = high[b] - high[a];
    double apartBelow = low[a] - low[b];
    if (apartAbove <= TOUCH || apartBelow <= TOUCH) {
      return;
    }
    double y = top + (bottom - top) * (apartAbove / (apartAbove + apartBelow));
    y = Math.rint(y / EdgeTable.QUANTUM) * EdgeTable.QUANTUM;
    if (y <= top || y >= bottom) {
      return;
    }
    if (crossingCount == crossings.length) {
      crossings = Arrays.copyOf(crossings, 2 * crossingCount);
    }
    crossings[crossingCount++] = y;
  }

  /** Hands on the pieces of the active edges, in order, at which the inside begins or ends. */
  private void hand(double height) {
    int shapesInside = 0;
    boolean inside = false;
    for (int i = 0; i < activeCount; i++) {
      int slot = active[i];
      int e = edge[slot];
      int shape = edges.shape[e];
      boolean before = inside(shape);
      wound[shape] += edges.winding[e];
      boolean after = inside(shape);
      shapesInside += after == before ? 0 : after ? 1 : -1;
      boolean now = shapesInside > 0;
      if (now != inside) {
        coverage.add(high[slot], low[slot], now ? height : -height);
        inside = now;
      }
    }
    for (int i = 0; i < activeCount; i++) {
      wound[edges.shape[edge[active[i]]]] = 0;
    }
  }

  private boolean inside(int shape) {
    return evenOdd[shape] ? (wound[shape] & 1) != 0 : wound[shape] != 0;
  }

  /** Shell's sort of {@code order} by the key of each. */
  private static void sort(int[] order, int count, double[] key) {
    int disorder = 0;
    for (int i = 1; i < count; i++) {
      disorder += key[order[i - 1]] > key[order[i]] ? 1 : 0;
    }
    if (disorder == 0) {
      return;
    }
    int gap = 1;
    while (gap < count / 9 && disorder > 8) {
      gap = 3 * gap + 1;
    }
    for (; gap > 0; gap /= 3) {
      for (int i = gap; i < count; i++) {
        int moved = order[i];
        double value = key[moved];
        int at = i;
        while (at >= gap && key[order[at - gap]] > value) {
          order[at] = order[at - gap];
          at -= gap;
        }
        order[at] = moved;
      }
    }
  }
}
