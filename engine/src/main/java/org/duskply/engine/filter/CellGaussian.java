package org.duskply.engine.filter;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * A Gaussian of large σ: means over cells of D×D pixels, D = ⌊σ/8⌋, anchored at the canvas origin;
 * a {@link DirectGaussian} over the cells; linear interpolation back, down and then across.
 *
 * <p>The mean over a cell adds (D² − 1)/12 to the variance, and linear interpolation between cell
 * centres D²/6 + 1/12 for an even D, D²/6 − 1/6 for an odd one, on average over the pixels of a
 * cell: D²/4 in all, less 1/4 for an odd D. The Gaussian over the cells has the variance that
 * remains. What interpolation adds differs over a cell by at most D²/6 either way, under 0.3 % of
 * σ²: a step comes out within 1e-3.
 *
 * <p>A mean is summed in double and divided once: of equal samples it is that sample to the bit,
 * and it lies between the least and the greatest. Interpolation a + t·(b − a) with t ≤ 1 − 1/2D
 * keeps both.
 */
final class CellGaussian implements Gaussian.Way {
  private final int cell;
  private final DirectGaussian gaussian;

  // At [o] how far the pixel o places after the one at or before a cell's centre is from it, in
  // cells.
  private final float[] between;

  private CellGaussian(int cell, DirectGaussian gaussian, float[] between) {
    this.cell = cell;
    this.gaussian = gaussian;
    this.between = between;
  }

  static CellGaussian of(double sigma) {
    int cell = (int) Math.floor(sigma / 8);
    double square = (double) cell * cell;
    double elsewhere = cell % 2 == 0 ? square / 4 : (square - 1) / 4;
    double remains = Math.sqrt(sigma * sigma - elsewhere) / cell;
    float[] between = new float[cell];
    for (int o = 0; o < cell; o++) {
      between[o] = (float) ((2 * o + (cell % 2 == 0 ? 1 : 0)) / (2.0 * cell));
    }
    return new CellGaussian(cell, DirectGaussian.of(remains), between);
  }

  @Override
  public int reach() {
    return gaussian.reach() * cell + 3 * cell / 2;
  }

  @Override
  public Region needs(Region out) {
    Region cells = gaussian.needs(cellsAround(out));
    return new Region(
        cells.left() * cell, cells.top() * cell, cells.right() * cell, cells.bottom() * cell);
  }

  /** The cells between whose centres the pixels lie. */
  private Region cellsAround(Region out) {
    return new Region(
        before(out.left()),
        before(out.top()),
        before(out.right() - 1) + 2,
        before(out.bottom() - 1) + 2);
  }

  /** The last cell whose centre lies at or before that of pixel {@code x}. */
  private int before(int x) {
    return Math.floorDiv(2 * x + 1 - cell, 2 * cell);
  }

  /** How many pixels {@code x} comes after the first that has the same {@link #before}. */
  private int offset(int x) {
    return Math.floorMod(2 * x + 1 - cell, 2 * cell) / 2;
  }

  @Override
  public long scratchBytes(Region out) {
    Region around = cellsAround(out);
    Region means = gaussian.needs(around);
    return Planes.bytes(means, 1)
        + Planes.bytes(around, 1)
        + gaussian.scratchBytes(around)
        + (long) means.width() * cell * Double.BYTES
        + (long) around.width() * Float.BYTES;
  }

  @Override
  public void apply(Planes in, int plane, Planes out, int outPlane) {
    Region around = cellsAround(out.area());
    Planes means = new Planes(gaussian.needs(around), 1);
    average(in, plane, means);
    Planes soft = new Planes(around, 1);
    gaussian.apply(means, 0, soft, 0);
    float[] row = new float[around.width()];
    for (int y = out.area().top(); y < out.area().bottom(); y++) {
      down(soft, y, row);
      across(row, out.area(), out.plane(outPlane), out.at(out.area().left(), y));
    }
  }

  private void average(Planes in, int plane, Planes means) {
    Region cells = means.area();
    double[] sums = new double[cells.width() * cell];
    for (int c = cells.top(); c < cells.bottom(); c++) {
      Arrays.fill(sums, 0);
      for (int y = c * cell; y < (c + 1) * cell; y++) {
        addRow(in.plane(plane), in.at(cells.left() * cell, y), sums);
      }
      int at = means.at(cells.left(), c);
      for (int i = 0; i < cells.width(); i++) {
        means.plane(0)[at + i] = mean(sums, i * cell);
      }
    }
  }

  private static void addRow(float[] in, int at, double[] sums) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += in[at + x];
    }
  }

  private float mean(double[] sums, int from) {
    double sum = 0;
    for (int x = from; x < from + cell; x++) {
      sum += sums[x];
    }
    return (float) (sum / ((double) cell * cell));
  }

  private void down(Planes soft, int y, float[] row) {
    float[] samples = soft.plane(0);
    int above = soft.at(soft.area().left(), before(y));
    int below = above + soft.area().width();
    float t = between[offset(y)];
    for (int i = 0; i < row.length; i++) {
      row[i] = samples[above + i] + t * (samples[below + i] - samples[above + i]);
    }
  }

  private void across(float[] row, Region area, float[] out, int at) {
    int i = 0;
    int o = offset(area.left());
    int x = 0;
    while (x < area.width()) {
      float from = row[i];
      float rise = row[i + 1] - from;
      int to = Math.min(area.width(), x + cell - o);
      for (; x < to; x++) {
        out[at + x] = from + between[o++] * rise;
      }
      o = 0;
      i++;
    }
  }
}
