package org.duskply.engine.pixel;

import java.util.Arrays;

/**
 * One or more planes of floats over a region, row by row without gaps. Written by one task and
 * never again once it has been handed on; whoever hands it on does so with a happens-before edge.
 */
public final class Planes {
  private final Region area;
  private final float[][] planes;
  private final int rowLength; // samples from one row to the next; 0 where all are one row

  /**
   * Planes of zeros.
   *
   * @param area the region; at most 2³¹ − 9 pixels
   * @param count how many planes
   */
  public Planes(Region area, int count) {
    this(area, new float[count][Math.toIntExact(area.count())], area.width());
  }

  private Planes(Region area, float[][] planes, int rowLength) {
    this.area = area;
    this.planes = planes;
    this.rowLength = rowLength;
  }

  /**
   * One plane of one value. All its rows are the same piece of memory, so that it takes no more
   * than one; it is not to be written to, and read by {@link #at} alone.
   */
  public static Planes uniform(Region area, float value) {
    float[] row = new float[area.width()];
    Arrays.fill(row, value);
    return new Planes(area, new float[][] {row}, 0);
  }

  /** The same samples, not copied, as if they lay so many columns and rows further on. */
  public Planes moved(int right, int down) {
    return new Planes(area.move(right, down), planes, rowLength);
  }

  /** The region that is held. */
  public Region area() {
    return area;
  }

  /** How many planes. */
  public int count() {
    return planes.length;
  }

  /** The samples of plane {@code p}, the live array. */
  public float[] plane(int p) {
    return planes[p];
  }

  /**
   * The index of the sample in column {@code x} of row {@code y}; both in canvas coordinates and
   * not checked.
   */
  public int at(int x, int y) {
    return (y - area.top()) * rowLength + (x - area.left());
  }

  /** Bytes of samples that planes of this shape hold. */
  public static long bytes(Region area, int count) {
    return area.count() * count * Float.BYTES;
  }

  /** Copies what {@code from} holds of this area into it; planes must be as many. */
  public void copyFrom(Planes from) {
    Region common = area.meet(from.area);
    for (int p = 0; p < planes.length; p++) {
      for (int y = common.top(); y < common.bottom(); y++) {
        System.arraycopy(
            from.planes[p],
            from.at(common.left(), y),
            planes[p],
            at(common.left(), y),
            common.width());
      }
    }
  }
}
