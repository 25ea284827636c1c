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

  // Columns worked through at a time, so that the rows of a window stay in the near cache.
  private static final int CHUNK = 1024;

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
  public void apply(Planes in, int plane, Planes out, int outPlane) {
    Region area = out.area();
    int reach = weights.length;
    float[] column = new float[Math.min(CHUNK, area.width()) + 2 * reach];
    float[] sums = new float[column.length];
    for (int x = area.left(); x < area.right(); x += CHUNK) {
      int count = Math.min(CHUNK, area.right() - x);
      for (int y = area.top(); y < area.bottom(); y++) {
        int centre = in.at(x - reach, y);
        blur(in.plane(plane), centre, in.area().width(), count + 2 * reach, sums, column, 0);
        blur(column, reach, 1, count, sums, out.plane(outPlane), out.at(x, y));
      }
    }
  }

  /** Blurs {@code count} samples from {@code centre}, whose neighbours lie {@code step} apart. */
  private void blur(
      float[] in, int centre, int step, int count, float[] sums, float[] out, int at) {
    Arrays.fill(sums, 0, count, 0f);
    int i = 0;
    for (; i + 2 <= weights.length; i += 2) {
      add(in, centre, (i + 1) * step, weights[i], (i + 2) * step, weights[i + 1], sums, count);
    }
    if (i < weights.length) {
      add(in, centre, (i + 1) * step, weights[i], sums, count);
    }
    for (int x = 0; x < count; x++) {
      out[at + x] = in[centre + x] + sums[x];
    }
  }

  /** Two distances in one go: half the traffic of sums, the same order. */
  private static void add(
      float[] in,
      int centre,
      int near,
      float nearWeight,
      int far,
      float farWeight,
      float[] sums,
      int count) {
    int a = centre - near;
    int b = centre + near;
    int c = centre - far;
    int d = centre + far;
    for (int x = 0; x < count; x++) {
      float twice = 2 * in[centre + x];
      float sum = sums[x] + nearWeight * ((in[a + x] + in[b + x]) - twice);
      sums[x] = sum + farWeight * ((in[c + x] + in[d + x]) - twice);
    }
  }

  private static void add(float[] in, int centre, int away, float weight, float[] sums, int count) {
    int a = centre - away;
    int b = centre + away;
    for (int x = 0; x < count; x++) {
      sums[x] += weight * ((in[a + x] + in[b + x]) - 2 * in[centre + x]);
    }
  }
}
