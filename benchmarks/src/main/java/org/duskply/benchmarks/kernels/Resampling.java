package org.duskply.benchmarks.kernels;

import org.duskply.engine.filter.Resampler;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Three planes in another size; megapixels are those of the picture that is read. */
@OperationsPerInvocation(Square.PIXELS)
public class Resampling extends Megapixels {
  private static final int LOBES = 3;

  /**
   * Four waves along a side. A sample is the sum of one across and one down, so that each direction
   * can be looked at alone.
   */
  private static final double[][] WAVES = new double[4][Square.SIDE];

  static {
    for (int number = 0; number < WAVES.length; number++) {
      for (int place = 0; place < Square.SIDE; place++) {
        WAVES[number][place] = 0.25 + 0.2 * StrictMath.sin((number + 2) * place / 60.0);
      }
    }
  }

  @Param({"300", "512", "1000", "1500"})
  public int side;

  private Resampler resampler = Resampler.of(1, 1, 1, 1);
  private final Planes in = new Planes(Square.AREA, 3);
  private Planes out = new Planes(Region.EMPTY, 3);

  @Setup
  public void prepare() {
    resampler = Resampler.of(Square.SIDE, Square.SIDE, side, side);
    out = new Planes(resampler.output(), 3);
    for (int p = 0; p < 3; p++) {
      float[] plane = in.plane(p);
      for (int i = 0; i < Square.PIXELS; i++) {
        plane[i] = (float) (WAVES[p][i % Square.SIDE] + WAVES[p + 1][i / Square.SIDE]);
      }
    }
    resample();
    for (int p = 0; p < 3; p++) {
      for (int y = 0; y < side; y += side / 7) {
        for (int x = 0; x < side; x++) {
          double want = along(p, x) + along(p + 1, y);
          Answers.near("resampled plane " + p, x, out.plane(p)[out.at(x, y)], want);
        }
      }
    }
  }

  /**
   * Lanczos-3 in one direction by its formula, at a place rounded to 1/1024 of a pixel, held to a
   * tenth of their range beyond the samples under the main lobe.
   */
  private double along(int number, int to) {
    double scale = (double) Square.SIDE / side;
    double stretch = Math.max(1, scale);
    double place = Math.rint(1024 * ((to + 0.5) * scale - 0.5)) / 1024;
    double sum = 0;
    double weights = 0;
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    int reach = (int) Math.ceil(LOBES * stretch);
    for (int k = (int) Math.floor(place) - reach; k <= place + reach; k++) {
      double sample = WAVES[number][Math.max(0, Math.min(Square.SIDE - 1, k))];
      double weight = lanczos((k - place) / stretch);
      sum += weight * sample;
      weights += weight;
      if (Math.abs(k - place) < stretch) {
        least = Math.min(least, sample);
        greatest = Math.max(greatest, sample);
      }
    }
    double over = 0.1 * (greatest - least);
    return Math.max(least - over, Math.min(greatest + over, sum / weights));
  }

  private static double lanczos(double x) {
    if (x == 0 || Math.abs(x) >= LOBES) {
      return x == 0 ? 1 : 0;
    }
    double angle = Math.PI * x;
    return LOBES * StrictMath.sin(angle) * StrictMath.sin(angle / LOBES) / (angle * angle);
  }

  @Benchmark
  public Planes resample() {
    resampler.apply(in, out);
    return out;
  }
}
