package org.duskply.engine.filter;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * The median of the 5 × 5 samples about each: the thirteenth when they stand in order, one of them
 * to the bit. −0 stands before 0. Samples must be numbers.
 *
 * <p>A fixed network of comparisons ({@link MedianNetwork}), each done for a whole stretch of a row
 * at once. Values are functions of absolute coordinates, the same in any output rectangle.
 */
public final class Median {
  /** Samples that count on each side. */
  public static final int REACH = MedianNetwork.SIDE / 2;

  // A stretch of a row whose 25 lines stay in the near cache.
  private static final int COLUMNS = 128;

  private Median() {}

  /** The input that {@code out} is made from. */
  public static Region needs(Region out) {
    return out.grow(REACH);
  }

  /** Bytes that {@link #apply} takes beside its input and its result. */
  public static long scratchBytes() {
    int side = MedianNetwork.SIDE;
    return Lines.bytes(side, COLUMNS + 2 * REACH) + Lines.bytes(side * side, COLUMNS);
  }

  /**
   * Fills plane {@code outPlane} of {@code out}, all of it.
   *
   * @param in must hold what {@link #needs} says, continued beyond borders by the caller
   * @param plane which plane of it
   */
  public static void apply(Planes in, int plane, Planes out, int outPlane) {
    Region area = out.area();
    if (!in.area().contains(needs(area))) {
      throw new IllegalArgumentException(in.area() + " does not hold " + needs(area));
    }
    int side = MedianNetwork.SIDE;
    float[][] columns = Lines.of(side, COLUMNS + 2 * REACH);
    float[][] lines = Lines.of(side * side, COLUMNS);
    for (int left = area.left(); left < area.right(); left += COLUMNS) {
      int width = Math.min(COLUMNS, area.right() - left);
      for (int y = area.top(); y < area.bottom(); y++) {
        Region about = new Region(left, y, left + width, y + 1).grow(REACH);
        Lines.read(in, plane, about, columns);
        sort(columns, 0, about.width());
        for (int rank = 0; rank < side; rank++) {
          for (int i = 0; i < side; i++) {
            System.arraycopy(columns[rank], i, lines[side * rank + i], 0, width);
          }
          sort(lines, side * rank, width);
        }
        for (int[] pair : MedianNetwork.SELECT) {
          order(lines[pair[0]], lines[pair[1]], width);
        }
        System.arraycopy(
            lines[MedianNetwork.MEDIAN], 0, out.plane(outPlane), out.at(left, y), width);
      }
    }
  }

  private static void sort(float[][] lines, int first, int count) {
    for (int[] pair : MedianNetwork.SORT) {
      order(lines[first + pair[0]], lines[first + pair[1]], count);
    }
  }

  private static void order(float[] lesser, float[] greater, int count) {
    for (int x = 0; x < count; x++) {
      float a = lesser[x];
      float b = greater[x];
      lesser[x] = Math.min(a, b);
      greater[x] = Math.max(a, b);
    }
  }
}
