package org.duskply.engine.mask;

import java.util.Arrays;

/**
 * The covered area of each pixel in some columns of one row, gathered from the pieces of line that
 * bound the inside from the left (positive height) or from the right (negative height).
 *
 * <p>A piece of height h adds to a pixel the area that lies right of it in the pixel: h to all
 * pixels beyond, a part to those that it crosses. Heights are multiples of {@link
 * EdgeTable#QUANTUM}, so the sum of those beyond is exact; parts are local to a pixel. Hence
 * nothing depends on which columns are asked for.
 */
final class RowCoverage {
  // Below this an area is what rounding leaves of 0; the same below 1.
  private static final double NOTHING = 0x1p-30;

  private final int left;
  private final int right;
  private final double[] parts;
  // Height that begins to count in full at this pixel.
  private final double[] beyond;

  RowCoverage(int left, int right) {
    this.left = left;
    this.right = right;
    parts = new double[right - left];
    beyond = new double[right - left];
  }

  /** Adds a piece of line whose ends lie at {@code a} and {@code b} across. */
  void add(double a, double b, double height) {
    double low = Math.min(a, b);
    double high = Math.max(a, b);
    int first = (int) Math.floor(low);
    int last = (int) Math.floor(high);
    if (first >= right) {
      return;
    }
    if (last + 1 < right) {
      beyond[Math.max(0, last + 1 - left)] += height;
    }
    if (last < left) {
      return;
    }
    if (first == last) {
      parts[first - left] += height * (0.5 * ((first + 1 - low) + (first + 1 - high)));
    } else {
      spread(low, high, first, last, height);
    }
  }

  private void spread(double low, double high, int first, int last, double height) {
    double across = high - low;
    double each = height / across;
    if (first >= left) {
      double reach = first + 1 - low;
      parts[first - left] += each * (0.5 * reach * reach);
    }
    int to = Math.min(last, right);
    for (int x = Math.max(first + 1, left); x < to; x++) {
      parts[x - left] += each * (x + 0.5 - low);
    }
    if (last < right) {
      double reach = high - last;
      parts[last - left] += height - each * (0.5 * reach * reach);
    }
  }

  /** Writes the row to {@code out} from {@code at} and begins a new one. */
  void write(float[] out, int at) {
    double whole = 0;
    for (int i = 0; i < parts.length; i++) {
      whole += beyond[i];
      double area = whole + parts[i];
      beyond[i] = 0;
      parts[i] = 0;
      out[at + i] = area <= NOTHING ? 0f : area >= 1 - NOTHING ? 1f : (float) area;
    }
  }

  /** Forgets what was added. */
  void clear() {
    Arrays.fill(parts, 0);
    Arrays.fill(beyond, 0);
  }
}
