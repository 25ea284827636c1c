package org.duskply.engine.filter;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * A Gaussian by weighted neighbours, ⌈4σ⌉ on each side, down the columns and then along the rows:
 *
 * <pre>y = x₀ + Σ wᵢ·((x₋ᵢ + xᵢ) − 2·x₀),   wᵢ = e^(−i²/2σ²) / Σ,   i from 1 outward</pre>
 *
 * <p>This is the normalised sum with the centre's weight, one less all the others, taken apart:
 * where all samples are equal every difference is 0 and y is x₀ to the bit, whatever the rounding
 * of the weights. Nor can y pass the greatest sample M: each rounded term is at most that for
 * neighbours of M, these sum to at most (M − x₀)·(1 − w₀)·(1 + (n + 3)·2⁻²⁴), and w₀ > 0.024 is
 * more than the rounding of n ≤ 64 terms; so too for the least. Weights below 2⁻³² are left out,
 * hence a very small σ changes nothing.
 *
 * <p>Columns come first because bands are wide and low: the halo of rows is then worked through
 * once only. Sums are in float in the order written; the error is some 1e-6 of the range of the
 * window.
 */
final class DirectGaussian implements Gaussian.Way {
  private static final double LEAST_WEIGHT = 0x1p-32;

  // What is worked through at a time: small enough for the near cache, long enough for vectors.
  private static final int COLUMNS = 512;
  private static final int ROWS = 64;

  // At [i] the weight of the two samples i + 1 away.
  private final float[] weights;

  private DirectGaussian(float[] weights) {
    this.weights = weights;
  }

  static DirectGaussian of(double sigma) {
    int count = (int) Math.ceil(4 * sigma);
    double[] exact = new double[count];
    double sum = 1;
    int kept = 0;
    for (int i = 1; i <= count; i++) {
      exact[i - 1] = StrictMath.exp(-((double) i * i) / (2 * sigma * sigma));
      sum += 2 * exact[i - 1];
      kept = exact[i - 1] >= LEAST_WEIGHT ? i : kept;
    }
    float[] weights = new float[kept];
    for (int i = 0; i < kept; i++) {
      weights[i] = (float) (exact[i] / sum);
    }
    return new DirectGaussian(weights);
  }

  @Override
  public int reach() {
    return weights.length;
  }

  @Override
  public Region needs(Region out) {
    return out.grow(weights.length);
  }

  @Override
  public long scratchBytes(Region out) {
    int width = Math.min(COLUMNS, out.width());
    int height = Math.min(ROWS, out.height());
    int wide = width + 2 * weights.length;
    return Lines.bytes(height + 2 * weights.length, wide)
        + Lines.bytes(height, wide)
        + Lines.bytes(wide, height)
        + Lines.bytes(width, height);
  }

  @Override
  public void apply(Planes in, int plane, Planes out, int outPlane) {
    Region area = out.area();
    int reach = weights.length;
    int width = Math.min(COLUMNS, area.width());
    int height = Math.min(ROWS, area.height());
    float[][] rows = Lines.of(height + 2 * reach, width + 2 * reach);
    float[][] softRows = Lines.of(height, width + 2 * reach);
    float[][] columns = Lines.of(width + 2 * reach, height);
    float[][] softColumns = Lines.of(width, height);
    for (int y = area.top(); y < area.bottom(); y += height) {
      for (int x = area.left(); x < area.right(); x += width) {
        Region part = new Region(x, y, x + width, y + height).meet(area);
        Region needed = part.grow(reach);
        Lines.read(in, plane, needed, rows);
        blur(rows, softRows, part.height(), needed.width());
        Lines.turn(softRows, part.height(), columns, 0, needed.width());
        blur(columns, softColumns, part.width(), part.height());
        Lines.writeColumns(softColumns, out, outPlane, part);
      }
    }
  }

  /**
   * Makes {@code count} lines, each from the one {@code reach} further on and its neighbours. Where
   * all of them are the same, as inside and outside an outline, nothing is summed.
   */
  private void blur(float[][] in, float[][] out, int count, int length) {
    Changes changes = new Changes(in, count + 2 * weights.length, length);
    for (int line = 0; line < count; line++) {
      int centre = line + weights.length;
      float[] sums = out[line];
      changes.among(line, line + 2 * weights.length);
      int from = changes.from();
      int to = Math.max(from, changes.to());
      even(in[centre], sums, 0, from);
      Arrays.fill(sums, from, to, 0f);
      int i = 1;
      for (; i < weights.length; i += 2) {
        add(
            in[centre],
            in[centre - i],
            in[centre + i],
            weights[i - 1],
            in[centre - i - 1],
            in[centre + i + 1],
            weights[i],
            sums,
            from,
            to);
      }
      if (i == weights.length) {
        add(in[centre], in[centre - i], in[centre + i], weights[i - 1], sums, from, to);
      }
      add(in[centre], sums, from, to);
      even(in[centre], sums, to, length);
    }
  }

  /** What the sum comes to where it is of equal samples: the sample, −0 being 0. */
  private static void even(float[] centre, float[] out, int from, int to) {
    for (int x = from; x < to; x++) {
      out[x] = centre[x] + 0f;
    }
  }

  /** Two distances in one go: half the traffic of sums, the same order. */
  private static void add(
      float[] centre,
      float[] before,
      float[] after,
      float weight,
      float[] farBefore,
      float[] farAfter,
      float farWeight,
      float[] sums,
      int from,
      int to) {
    for (int x = from; x < to; x++) {
      float twice = 2 * centre[x];
      float sum = sums[x] + weight * ((before[x] + after[x]) - twice);
      sums[x] = sum + farWeight * ((farBefore[x] + farAfter[x]) - twice);
    }
  }

  private static void add(
      float[] centre, float[] before, float[] after, float weight, float[] sums, int from, int to) {
    for (int x = from; x < to; x++) {
      sums[x] += weight * ((before[x] + after[x]) - 2 * centre[x]);
    }
  }

  private static void add(float[] centre, float[] sums, int from, int to) {
    for (int x = from; x < to; x++) {
      sums[x] = centre[x] + sums[x];
    }
  }
}
