package org.duskply.engine.frame;

import java.util.Arrays;

/**
 * Reduces linear rows to means over n × n cells anchored at the picture's origin, for previews. A
 * cell at the right or bottom border is the mean of the pixels that are there. Rows are added one
 * after the other from the top of a row of cells; they may come from several units.
 *
 * <p>Each cell is summed in double, row by row from the top, in each row from the left, so that its
 * value does not depend on how rows were grouped. With coverage (a fourth plane) colours are
 * weighted by it and divided after; a cell without coverage is black. For one thread.
 */
public final class CellMeans {
  private static final int COVERAGE = 3;

  private final int n;
  private final int left;
  private final int right;
  private final int height;
  private final int cells;
  private final double[][] sums;
  private int rows;

  /**
   * @param n pixels along a cell's side, at least 1
   * @param left first column, a multiple of n
   * @param right one past the last column; a multiple of n or the picture's width
   * @param height of the whole picture
   * @param planes 3, or 4 with coverage last
   */
  public CellMeans(int n, int left, int right, int height, int planes) {
    if (n < 1 || left % n != 0 || right <= left || (planes != 3 && planes != 4)) {
      throw new IllegalArgumentException(
          "cells of " + n + " from " + left + " to " + right + " of " + planes + " planes");
    }
    this.n = n;
    this.left = left;
    this.right = right;
    this.height = height;
    this.cells = (right - left - 1) / n + 1;
    this.sums = new double[planes][cells];
  }

  /** How many cells a row has. */
  public int cells() {
    return cells;
  }

  /** Bytes of sums that one of these holds. */
  public static long bytes(int n, int columns, int planes) {
    return 8L * planes * ((columns - 1) / n + 1);
  }

  /**
   * Adds row {@code y} of the picture.
   *
   * @param planes as many as were declared; column {@code left} stands at {@code at}
   * @return whether the row of cells is complete, so that it can be taken
   */
  public boolean add(int y, float[][] planes, int at) {
    if (y % n == 0) {
      rows = 0;
      for (double[] sum : sums) {
        Arrays.fill(sum, 0);
      }
    }
    if (rows != y % n) {
      throw new IllegalStateException("row " + y + " came after " + rows + " rows of its cells");
    }
    rows++;
    if (sums.length > COVERAGE) {
      float[] coverage = planes[COVERAGE];
      for (int p = 0; p < COVERAGE; p++) {
        weigh(sums[p], planes[p], coverage, at);
      }
      sum(sums[COVERAGE], coverage, at);
    } else {
      for (int p = 0; p < sums.length; p++) {
        sum(sums[p], planes[p], at);
      }
    }
    return rows == n || y == height - 1;
  }

  private void sum(double[] sums, float[] plane, int at) {
    int count = right - left;
    for (int cell = 0, i = 0; i < count; cell++) {
      double sum = sums[cell];
      for (int end = Math.min(i + n, count); i < end; i++) {
        sum += plane[at + i];
      }
      sums[cell] = sum;
    }
  }

  private void weigh(double[] sums, float[] plane, float[] coverage, int at) {
    int count = right - left;
    for (int cell = 0, i = 0; i < count; cell++) {
      double sum = sums[cell];
      for (int end = Math.min(i + n, count); i < end; i++) {
        sum += (double) plane[at + i] * coverage[at + i];
      }
      sums[cell] = sum;
    }
  }

  /**
   * The means of the complete row of cells.
   *
   * @param into as many planes; the first cell goes to {@code at}
   */
  public void take(float[][] into, int at) {
    for (int cell = 0; cell < cells; cell++) {
      double pixels = (double) rows * Math.min(n, right - left - cell * n);
      double weight = sums.length > COVERAGE ? sums[COVERAGE][cell] : pixels;
      for (int p = 0; p < COVERAGE; p++) {
        into[p][at + cell] = weight > 0 ? (float) (sums[p][cell] / weight) : 0;
      }
      if (sums.length > COVERAGE) {
        into[COVERAGE][at + cell] = (float) (weight / pixels);
      }
    }
  }
}
