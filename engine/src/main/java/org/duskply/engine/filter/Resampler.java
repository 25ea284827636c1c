package org.duskply.engine.filter;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * Brings a picture to another size by Lanczos-3, in linear light: rows first, then columns. Where
 * it shrinks the kernel is widened by the same factor, so that every sample counts. Pixel centres
 * map onto each other: output column j looks at {@code (j + ½)·n/m − ½} of the input. Weights are
 * computed in double for every output column and row and sum to 1; taps beyond the border take the
 * edge pixel.
 *
 * <p>Ringing is held in each pass: a value lies within {@code [lo − 0.1·(hi − lo), hi + 0.1·(hi −
 * lo)]} of the samples under the kernel's main lobe, so that a lamp of twenty times white draws no
 * black ring. The same size copies bits. Immutable and thread-safe.
 */
public final class Resampler {
  private final Axis across;
  private final Axis down;

  private Resampler(Axis across, Axis down) {
    this.across = across;
    this.down = down;
  }

  /** From {@code width × height} to {@code newWidth × newHeight}, each at least 1. */
  public static Resampler of(int width, int height, int newWidth, int newHeight) {
    return new Resampler(new Axis(width, newWidth), new Axis(height, newHeight));
  }

  /** What is read to make {@code out}. */
  public Region needs(Region out) {
    if (out.empty()) {
      return Region.EMPTY;
    }
    return new Region(
        across.first(out.left()),
        down.first(out.top()),
        across.last(out.right() - 1) + 1,
        down.last(out.bottom() - 1) + 1);
  }

  /** Most bytes that {@link #apply} takes beside its input and its result. */
  public long scratchBytes(Region out) {
    Region in = needs(out);
    return Planes.bytes(new Region(0, 0, out.width(), in.height()), 1);
  }

  /**
   * Fills all planes of {@code out}.
   *
   * @param in covers at least {@code needs(out.area())}, as many planes
   */
  public void apply(Planes in, Planes out) {
    for (int p = 0; p < out.count(); p++) {
      apply(in, out, p);
    }
  }

  private void apply(Planes in, Planes out, int p) {
    Region area = out.area();
    Region needed = needs(area);
    Planes rows =
        new Planes(new Region(area.left(), needed.top(), area.right(), needed.bottom()), 1);
    float[] narrow = rows.plane(0);
    for (int y = needed.top(); y < needed.bottom(); y++) {
      int at = in.at(0, y);
      int to = rows.at(area.left(), y);
      for (int x = area.left(); x < area.right(); x++) {
        narrow[to++] = across.value(x, in.plane(p), at, 1);
      }
    }
    for (int y = area.top(); y < area.bottom(); y++) {
      int to = out.at(area.left(), y);
      for (int x = area.left(); x < area.right(); x++) {
        out.plane(p)[to++] = down.value(y, narrow, rows.at(x, 0), area.width());
      }
    }
  }

  /** One direction: for each output place its taps. */
  private static final class Axis {
    private static final double LOBES = 3;
    private static final float OVERSHOOT = 0.1f;

    private final int length;
    private final int[] start;
    private final int[] lobeFrom;
    private final int[] lobeTo;
    private final float[][] weights;

    Axis(int length, int newLength) {
      this.length = length;
      this.start = new int[newLength];
      this.lobeFrom = new int[newLength];
      this.lobeTo = new int[newLength];
      this.weights = new float[newLength][];
      double ratio = (double) length / newLength;
      double stretch = Math.max(1, ratio);
      for (int j = 0; j < newLength; j++) {
        prepare(j, length == newLength ? j : (j + 0.5) * ratio - 0.5, stretch);
      }
    }

    private void prepare(int j, double centre, double stretch) {
      start[j] = (int) Math.ceil(centre - LOBES * stretch);
      int end = (int) Math.floor(centre + LOBES * stretch);
      double[] exact = new double[end - start[j] + 1];
      double sum = 0;
      lobeFrom[j] = (int) Math.floor(centre - stretch) + 1;
      lobeTo[j] = (int) Math.ceil(centre + stretch) - 1;
      for (int i = 0; i < exact.length; i++) {
        exact[i] = lanczos((start[j] + i - centre) / stretch);
        sum += exact[i];
      }
      weights[j] = new float[exact.length];
      for (int i = 0; i < exact.length; i++) {
        weights[j][i] = (float) (exact[i] / sum);
      }
    }

    private static double lanczos(double t) {
      if (t == 0) {
        return 1;
      }
      if (Math.abs(t) >= LOBES || t == Math.rint(t)) {
        return 0; // whole places are exact zeros of the kernel
      }
      double a = StrictMath.PI * t;
      return LOBES * StrictMath.sin(a) * StrictMath.sin(a / LOBES) / (a * a);
    }

    int first(int j) {
      return Math.max(0, Math.min(length - 1, start[j]));
    }

    int last(int j) {
      return Math.max(0, Math.min(length - 1, start[j] + weights[j].length - 1));
    }

    /** The value at output place {@code j}; input place i stands at {@code values[at + i·step]}. */
    float value(int j, float[] values, int at, int step) {
      float[] w = weights[j];
      int from = start[j];
      float sum = 0;
      if (from >= 0 && from + w.length <= length) {
        int index = at + from * step;
        for (float weight : w) {
          sum += weight * values[index];
          index += step;
        }
      } else {
        for (int i = 0; i < w.length; i++) {
          sum += w[i] * values[at + held(from + i) * step];
        }
      }
      return unrung(j, sum, values, at, step);
    }

    private float unrung(int j, float sum, float[] values, int at, int step) {
      float lo = Float.POSITIVE_INFINITY;
      float hi = Float.NEGATIVE_INFINITY;
      for (int i = lobeFrom[j]; i <= lobeTo[j]; i++) {
        float v = values[at + held(i) * step];
        lo = Math.min(lo, v);
        hi = Math.max(hi, v);
      }
      float more = OVERSHOOT * (hi - lo);
      return Math.max(lo - more, Math.min(hi + more, sum));
    }

    private int held(int i) {
      return Math.max(0, Math.min(length - 1, i));
    }
  }
}
