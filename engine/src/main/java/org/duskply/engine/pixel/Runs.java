package org.duskply.engine.pixel;

import java.util.Arrays;

/**
 * Where a mask is 0, where it is 1, and where it lies between: for each row its runs of equal kind,
 * from left to right. Runs where it is 0 are left out. A {@link Kind#MIXED} run holds neither an
 * exact 0 nor an exact 1, so that inner loops need not ask. A row is at most {@link #most} runs, so
 * that a mask of noise costs no more memory than one of outlines. Immutable.
 */
public final class Runs {
  /** What a mask is along a run. */
  public enum Kind {
    /** 1 at every pixel. */
    FULL,
    /** Neither 0 nor 1 at any pixel. */
    MIXED,
    /** Anything from 0 to 1: what a row becomes that changes kind too often for runs to pay. */
    ANY
  }

  /** Two bounds, and room for a reference to the kind. */
  private static final long BYTES_A_RUN = 16;

  private final Region area;
  private final int[] firstOfRow;
  private final int[] left;
  private final int[] right;
  private final Kind[] kind;

  private Runs(Region area, int[] firstOfRow, int[] left, int[] right, Kind[] kind) {
    this.area = area;
    this.firstOfRow = firstOfRow;
    this.left = left;
    this.right = right;
    this.kind = kind;
  }

  /** The runs of plane 0 of {@code mask}, whose values lie in 0…1. */
  public static Runs of(Planes mask) {
    Region area = mask.area();
    Builder builder = new Builder(area);
    float[] values = mask.plane(0);
    for (int y = area.top(); y < area.bottom(); y++) {
      builder.row(values, mask.at(area.left(), y), area.left(), area.width());
    }
    return builder.done();
  }

  /** The runs of a mask that is 1 everywhere: one a row. */
  public static Runs full(Region area) {
    int rows = area.height();
    int[] firstOfRow = new int[rows + 1];
    int[] left = new int[rows];
    int[] right = new int[rows];
    Kind[] kind = new Kind[rows];
    Arrays.setAll(firstOfRow, row -> row);
    Arrays.fill(left, area.left());
    Arrays.fill(right, area.right());
    Arrays.fill(kind, Kind.FULL);
    return new Runs(area, firstOfRow, left, right, kind);
  }

  /** The region of the mask. */
  public Region area() {
    return area;
  }

  /** Index of the first run of row {@code y}, which is in the area. */
  public int first(int y) {
    return firstOfRow[y - area.top()];
  }

  /** Index after the last run of row {@code y}, which is in the area. */
  public int end(int y) {
    return firstOfRow[y - area.top() + 1];
  }

  /** First column of a run. */
  public int left(int run) {
    return left[run];
  }

  /** One past the last column of a run. */
  public int right(int run) {
    return right[run];
  }

  /** What the mask is along a run. */
  public Kind kind(int run) {
    return kind[run];
  }

  /** How many runs in all rows. */
  public int count() {
    return left.length;
  }

  /** Bytes that these runs take. */
  public long heldBytes() {
    return Integer.BYTES * (long) firstOfRow.length + BYTES_A_RUN * count();
  }

  /** Most runs that a row of {@code width} pixels is cut into. */
  public static int most(int width) {
    return 16 + width / 32;
  }

  /** Most bytes that the runs of a region take. */
  public static long bytes(Region area) {
    return (long) area.height() * (Integer.BYTES + BYTES_A_RUN * most(area.width()));
  }

  /** Collects runs row by row. */
  private static final class Builder {
    private final Region area;
    private final int[] firstOfRow;
    private int rows;
    private int count;
    private int[] left = new int[64];
    private int[] right = new int[64];
    private Kind[] kind = new Kind[64];

    Builder(Region area) {
      this.area = area;
      this.firstOfRow = new int[area.height() + 1];
    }

    void row(float[] values, int at, int column, int width) {
      int firstRun = count;
      int i = 0;
      while (i < width) {
        float v = values[at + i];
        int start = i;
        if (v == 0f) {
          while (i < width && values[at + i] == 0f) {
            i++;
          }
        } else if (v == 1f) {
          while (i < width && values[at + i] == 1f) {
            i++;
          }
          add(column + start, column + i, Kind.FULL);
        } else {
          while (i < width && values[at + i] != 0f && values[at + i] != 1f) {
            i++;
          }
          add(column + start, column + i, Kind.MIXED);
        }
      }
      if (count - firstRun > most(width)) {
        right[firstRun] = right[count - 1];
        kind[firstRun] = Kind.ANY;
        count = firstRun + 1;
      }
      firstOfRow[++rows] = count;
    }

    private void add(int from, int to, Kind k) {
      if (count == left.length) {
        left = Arrays.copyOf(left, 2 * count);
        right = Arrays.copyOf(right, 2 * count);
        kind = Arrays.copyOf(kind, 2 * count);
      }
      left[count] = from;
      right[count] = to;
      kind[count++] = k;
    }

    Runs done() {
      return new Runs(
          area,
          firstOfRow,
          Arrays.copyOf(left, count),
          Arrays.copyOf(right, count),
          Arrays.copyOf(kind, count));
    }
  }
}
