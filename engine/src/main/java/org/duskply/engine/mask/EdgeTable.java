package org.duskply.engine.mask;

import java.util.Arrays;
import org.duskply.engine.DuskplyException;

/**
 * The edges of an outline that are not horizontal, each from its upper to its lower end, found
 * quickly by the rows that they touch. Immutable.
 *
 * <p>Heights are rounded to multiples of {@link #QUANTUM}: differences and sums of heights inside a
 * row are then exact in double, so that a fully covered pixel is 1 without rounding. The rounding
 * moves an edge by less than 2e-9 px.
 *
 * <p>Edges are sorted by the row of their upper end, and a tree over them holds the last row that
 * any edge of a branch touches: the edges of a row are those of a prefix, less the branches that
 * ended above.
 */
final class EdgeTable {
  /** What heights are multiples of, in pixels. */
  static final double QUANTUM = 0x1p-28;

  /** The most pairs of an edge and a row that it touches. */
  static final long MAX_EDGE_ROWS = 64_000_000;

  final double[] topX;
  final double[] topY;
  final double[] bottomX;
  final double[] bottomY;

  /** Pixels across for each pixel down. */
  final double[] slope;

  /** +1 where the outline runs down along the edge, −1 where it runs up. */
  final byte[] winding;

  /** Which shape of the outline the edge belongs to. */
  final int[] shape;

  private final int[] firstRow;
  private final int[] lastRow;
  private final int[] lastRowTree;
  private final int leaves;
  private final int mostInRow;

  private EdgeTable(Outline outline, int[] from, int[] to, int[] shape) {
    int count = from.length;
    topX = new double[count];
    topY = new double[count];
    bottomX = new double[count];
    bottomY = new double[count];
    slope = new double[count];
    winding = new byte[count];
    this.shape = shape;
    firstRow = new int[count];
    lastRow = new int[count];
    for (int e = 0; e < count; e++) {
      boolean runsDown = height(outline, from[e]) < height(outline, to[e]);
      int upper = runsDown ? from[e] : to[e];
      int lower = runsDown ? to[e] : from[e];
      topX[e] = outline.x(upper);
      topY[e] = height(outline, upper);
      bottomX[e] = outline.x(lower);
      bottomY[e] = height(outline, lower);
      slope[e] = (bottomX[e] - topX[e]) / (bottomY[e] - topY[e]);
      winding[e] = (byte) (runsDown ? 1 : -1);
      firstRow[e] = (int) Math.floor(topY[e]);
      lastRow[e] = (int) Math.ceil(bottomY[e]) - 1;
    }
    leaves = Math.max(1, Integer.highestOneBit(Math.max(1, 2 * count - 1)));
    lastRowTree = tree(lastRow, leaves);
    checkRows();
    mostInRow = mostInRow(firstRow, lastRow);
  }

  static EdgeTable of(Outline outline) {
    int[] from = new int[outline.points()];
    int[] to = new int[outline.points()];
    int[] shape = new int[outline.points()];
    int count = 0;
    for (int c = 0; c < outline.contours(); c++) {
      int previous = outline.end(c) - 1;
      for (int p = outline.start(c); p < outline.end(c); p++) {
        if (height(outline, previous) != height(outline, p)) {
          from[count] = previous;
          shape[count] = outline.shape(c);
          to[count++] = p;
        }
        previous = p;
      }
    }
    long[] order = order(outline, from, to, count);
    int[] sortedFrom = new int[count];
    int[] sortedTo = new int[count];
    int[] sortedShape = new int[count];
    for (int i = 0; i < count; i++) {
      int e = (int) order[i];
      sortedFrom[i] = from[e];
      sortedTo[i] = to[e];
      sortedShape[i] = shape[e];
    }
    return new EdgeTable(outline, sortedFrom, sortedTo, sortedShape);
  }

  /** Row of the upper end in the high half, place in the outline in the low half; sorted. */
  private static long[] order(Outline outline, int[] from, int[] to, int count) {
    long[] order = new long[count];
    for (int e = 0; e < count; e++) {
      double top = Math.min(height(outline, from[e]), height(outline, to[e]));
      order[e] = ((long) Math.floor(top) << 32) | e;
    }
    Arrays.sort(order);
    return order;
  }

  private static double height(Outline outline, int point) {
    return Math.rint(outline.y(point) / QUANTUM) * QUANTUM;
  }

  private static int[] tree(int[] values, int leaves) {
    int[] tree = new int[2 * leaves];
    Arrays.fill(tree, Integer.MIN_VALUE);
    System.arraycopy(values, 0, tree, leaves, values.length);
    for (int node = leaves - 1; node > 0; node--) {
      tree[node] = Math.max(tree[2 * node], tree[2 * node + 1]);
    }
    return tree;
  }

  private void checkRows() {
    long pairs = 0;
    for (int e = 0; e < firstRow.length; e++) {
      pairs += lastRow[e] - firstRow[e] + 1;
    }
    if (pairs > MAX_EDGE_ROWS) {
      throw new DuskplyException(
          "An outline runs up and down too often to be filled: its edges cross more than 64 million"
              + " rows of pixels all told.");
    }
  }

  /** The first rows ascend. */
  private static int mostInRow(int[] firstRow, int[] lastRow) {
    int[] ends = lastRow.clone();
    Arrays.sort(ends);
    int most = 0;
    int ended = 0;
    for (int begun = 1; begun <= firstRow.length; begun++) {
      while (ends[ended] < firstRow[begun - 1]) {
        ended++;
      }
      most = Math.max(most, begun - ended);
    }
    return most;
  }

  /** How many edges touch the row that most of them touch. */
  int mostInRow() {
    return mostInRow;
  }

  /** How many edges. */
  int count() {
    return topX.length;
  }

  /** The row of the uppermost edge's upper end; there must be an edge. */
  int top() {
    return firstRow[0];
  }

  /** One past the last row that an edge touches; there must be an edge. */
  int bottom() {
    return lastRowTree[1] + 1;
  }

  /**
   * Finds the edges that touch rows {@code top} up to {@code bottom}.
   *
   * @param into where their indices go, ascending, as far as it reaches
   * @return how many there are, which may be more than {@code into} holds
   */
  int gather(int top, int bottom, int[] into) {
    int prefix = startingAbove(bottom);
    return prefix == 0 ? 0 : gather(1, 0, leaves, prefix, top, into, 0);
  }

  private int gather(int node, int from, int span, int prefix, int top, int[] into, int found) {
    if (from >= prefix || lastRowTree[node] < top) {
      return found;
    }
    if (span == 1) {
      if (found < into.length) {
        into[found] = from;
      }
      return found + 1;
    }
    int half = span / 2;
    int left = gather(2 * node, from, half, prefix, top, into, found);
    return gather(2 * node + 1, from + half, half, prefix, top, into, left);
  }

  /** How many edges start above row {@code row}. */
  private int startingAbove(int row) {
    int low = 0;
    int high = firstRow.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (firstRow[middle] < row) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Where edge {@code e} is {@code down} pixels below the top of row {@code row}. */
  double xAt(int e, int row, double down) {
    double x = topX[e] + ((row - topY[e]) + down) * slope[e];
    // An edge that is all but horizontal would otherwise overshoot its ends by rounding.
    return Math.max(Math.min(topX[e], bottomX[e]), Math.min(Math.max(topX[e], bottomX[e]), x));
  }
}
