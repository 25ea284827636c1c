package org.duskply.benchmarks.kernels;

import org.duskply.engine.filter.Gaussian;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/**
 * A feather of some radius: one plane with a straight upright edge. Below a radius of 32 each
 * sample is weighted by its own distance, from there on means of cells are.
 */
@OperationsPerInvocation(Square.PIXELS)
public class Feathering extends Megapixels {
  private static final int EDGE = Square.SIDE / 2;

  @Param({"2", "8", "16", "31", "32", "100", "400"})
  public int radius;

  private Gaussian gaussian = Gaussian.of(0);
  private Planes in = new Planes(Region.EMPTY, 1);
  private final Planes out = new Planes(Square.AREA, 1);

  @Setup
  public void prepare() {
    gaussian = Gaussian.of(radius);
    Region around = gaussian.needs(Square.AREA);
    in = new Planes(around, 1);
    for (int y = around.top(); y < around.bottom(); y++) {
      for (int x = Math.max(EDGE, around.left()); x < around.right(); x++) {
        in.plane(0)[in.at(x, y)] = 1;
      }
    }
    feather();
    // Four standard deviations leave out 7e-5 of the weight; of means of cells Gaussian promises
    // 1e-3.
    double bound = radius < 32 ? 1e-4 : 1e-3;
    for (int x = 0; x < Square.SIDE; x += 7) {
      Close.within("feather at " + x, out.plane(0)[out.at(x, 17)], share(x), bound);
    }
  }

  /** The share of the normalised, sampled Gaussian that reaches over the edge. */
  private double share(int x) {
    double sigma = radius / 2.0;
    int reach = (int) Math.ceil(8 * sigma);
    double inside = 0;
    double all = 0;
    for (int d = -reach; d <= reach; d++) {
      double weight = StrictMath.exp(-((double) d * d) / (2 * sigma * sigma));
      all += weight;
      inside += x + d >= EDGE ? weight : 0;
    }
    return inside / all;
  }

  @Benchmark
  public Planes feather() {
    gaussian.apply(in, 0, out, 0);
    return out;
  }
}
