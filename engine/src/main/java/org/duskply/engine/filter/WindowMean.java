package org.duskply.engine.filter;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * The mean over a square window of 2r + 1 pixels a side, down the columns and then along the rows.
 *
 * <p>Rows and columns are cut into blocks as long as the window, anchored at the canvas origin. A
 * window is the end of one block and the beginning of the next: the sum from its first sample to
 * the end of that block, plus the sum from the next block's beginning to its last sample. So a sum
 * costs three additions whatever r is, nothing is ever subtracted, and a value is the same in any
 * output rectangle.
 *
 * <p>Sums are in double, divided once and rounded to float after each of the two passes: equal
 * samples come out to the bit, and no mean lies beyond the least or the greatest. Error at most an
 * ulp. Immutable; any number of threads may apply it.
 */
public final class WindowMean {
  /** The greatest r, in pixels. */
  public static final int MAX_RADIUS = 4_096;

  // Columns worked through at a time: bounds what the column pass holds to 64 windows of doubles.
  private static final int CHUNK = 64;

  private final int radius;
  private final int length;

  private WindowMean(int radius) {
    this.radius = radius;
    this.length = 2 * radius + 1;
  }

  /**
   * The mean of a radius.
   *
   * @param radius from 0 (which changes nothing) to {@link #MAX_RADIUS}
   */
  public static WindowMean of(int radius) {
    if (radius < 0 || radius > MAX_RADIUS) {
      throw new IllegalArgumentException("radius " + radius);
    }
    return new WindowMean(radius);
  }

  /** The most pixels on any side that an output needs around it. */
  public int reach() {
    return radius;
  }

  /** The input that {@code out} is made from. */
  public Region needs(Region out) {
    return out.grow(radius);
  }

  /** Bytes that {@link #apply} takes beside its input and its result. */
  public long scratchBytes(Region out) {
    Region wide = out.grow(radius, 0);
    return Planes.bytes(wide, 1) + ((length + 1L) * CHUNK + wide.width()) * Double.BYTES;
  }

  /**
   * Fills plane {@code outPlane} of {@code out}, all of it.
   *
   * @param in must hold what {@link #needs} says, continued beyond borders by the caller
   * @param plane which plane of it
   */
  public void apply(Planes in, int plane, Planes out, int outPlane) {
    Region area = out.area();
    if (!in.area().contains(needs(area))) {
      throw new IllegalArgumentException(in.area() + " does not hold " + needs(area));
    }
    if (area.empty()) {
      return;
    }
    Region wide = area.grow(radius, 0);
    Planes columns = new Planes(wide, 1);
    double[] ends = new double[length * CHUNK];
    double[] begins = new double[CHUNK];
    for (int x = wide.left(); x < wide.right(); x += CHUNK) {
      int count = Math.min(CHUNK, wide.right() - x);
      for (int y = area.top(); y < area.bottom(); ) {
        y = downBlock(in, plane, x, count, y, columns, ends, begins);
      }
    }
    double[] sums = new double[wide.width()];
    for (int y = area.top(); y < area.bottom(); y++) {
      along(
          columns.plane(0),
          columns.at(wide.left(), y),
          wide,
          sums,
          out.plane(outPlane),
          out.at(area.left(), y));
    }
  }

  /** Means of the rows from {@code y} whose windows begin in the same block; one past the last. */
  private int downBlock(
      Planes in, int plane, int x, int count, int y, Planes out, double[] ends, double[] begins) {
    float[] samples = in.plane(plane);
    int block = Math.floorDiv(y - radius, length) * length;
    int first = y - radius - block;
    int to = Math.min(out.area().bottom(), block + length + radius);
    Arrays.fill(ends, (length - 1) * CHUNK, length * CHUNK, 0);
    addRow(
        samples,
        in.at(x, block + length - 1),
        ends,
        (length - 1) * CHUNK,
        ends,
        (length - 1) * CHUNK,
        count);
    for (int o = length - 2; o >= first; o--) {
      addRow(samples, in.at(x, block + o), ends, (o + 1) * CHUNK, ends, o * CHUNK, count);
    }
    Arrays.fill(begins, 0);
    for (int row = block + length; row < y + radius; row++) {
      addRow(samples, in.at(x, row), begins, 0, begins, 0, count);
    }
    for (int row = y; row < to; row++) {
      int o = row - radius - block;
      if (o > 0) {
        addRow(samples, in.at(x, row + radius), begins, 0, begins, 0, count);
      }
      divide(ends, o * CHUNK, begins, out.plane(0), out.at(x, row), count);
    }
    return to;
  }

  private static void addRow(
      float[] in, int at, double[] sums, int from, double[] to, int into, int count) {
    for (int x = 0; x < count; x++) {
      to[into + x] = sums[from + x] + in[at + x];
    }
  }

  private void divide(double[] ends, int from, double[] begins, float[] out, int at, int count) {
    for (int x = 0; x < count; x++) {
      out[at + x] = (float) ((ends[from + x] + begins[x]) / length);
    }
  }

  /** Means along one row, whose samples lie in {@code in} from {@code at}. */
  private void along(float[] in, int at, Region wide, double[] ends, float[] out, int outAt) {
    int width = wide.width() - 2 * radius;
    for (int from = 0; from < width; ) {
      int into = Math.floorMod(wide.left() + from, length);
      int to = Math.min(width, from + length - into);
      // Windows that begin at places from … to − 1 all begin in the block that ends before `next`.
      int next = from + length - into;
      double sum = 0;
      for (int x = next - 1; x >= from; x--) {
        sum += in[at + x];
        ends[x] = sum;
      }
      double begin = 0;
      for (int x = next; x < from + 2 * radius; x++) {
        begin += in[at + x];
      }
      for (int x = from; x < to; x++) {
        if (x + 2 * radius >= next) {
          begin += in[at + x + 2 * radius];
        }
        out[outAt + x] = (float) ((ends[x] + begin) / length);
      }
      from = to;
    }
  }
}
