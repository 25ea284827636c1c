package org.duskply.engine.filter;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * A block of samples as lines, each an array of its own: rows, or columns. A kernel that works
 * across lines then reads and writes all arrays at one and the same index, the form that compilers
 * turn into vector instructions: they may not assume that offsets into one array keep apart.
 */
final class Lines {
  private Lines() {}

  /** {@code count} lines of {@code length} samples. */
  static float[][] of(int count, int length) {
    return new float[count][length];
  }

  /** Bytes that {@code count} lines of {@code length} samples take, about 24 of each its own. */
  static long bytes(int count, int length) {
    return count * (24L + (long) length * Float.BYTES);
  }

  /** Copies the rows of {@code area} into the first of {@code lines}. */
  static void read(Planes in, int plane, Region area, float[][] lines) {
    float[] samples = in.plane(plane);
    for (int y = 0; y < area.height(); y++) {
      int at = in.at(area.left(), area.top() + y);
      System.arraycopy(samples, at, lines[y], 0, area.width());
    }
  }

  /** Makes {@code width} columns, from {@code first} on, of rows. */
  static void turn(float[][] rows, int height, float[][] columns, int first, int width) {
    for (int x = 0; x < width; x++) {
      float[] column = columns[first + x];
      for (int y = 0; y < height; y++) {
        column[y] = rows[y][x];
      }
    }
  }

  /** Writes columns over {@code area}. */
  static void writeColumns(float[][] columns, Planes out, int plane, Region area) {
    float[] samples = out.plane(plane);
    for (int y = 0; y < area.height(); y++) {
      int at = out.at(area.left(), area.top() + y);
      for (int x = 0; x < area.width(); x++) {
        samples[at + x] = columns[x][y];
      }
    }
  }
}
