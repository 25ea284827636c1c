package org.duskply.benchmarks.kernels;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Setup;

/** The median of 5 × 5 samples about each: one plane of noise. */
@OperationsPerInvocation(Square.PIXELS)
public class Median extends Megapixels {
  private static final int SIDE = 5;

  private final Planes in = new Planes(org.duskply.engine.filter.Median.needs(Square.AREA), 1);
  private final Planes out = new Planes(Square.AREA, 1);

  @Setup
  public void prepare() {
    int count = in.plane(0).length;
    System.arraycopy(Content.NOISE.plane(count, 0), 0, in.plane(0), 0, count);
    median();
    float[] window = new float[SIDE * SIDE];
    Region some = new Region(0, 7, Square.SIDE, 11);
    for (int y = some.top(); y < some.bottom(); y++) {
      for (int x = some.left(); x < some.right(); x++) {
        for (int i = 0; i < window.length; i++) {
          window[i] = in.plane(0)[in.at(x - 2 + i % SIDE, y - 2 + i / SIDE)];
        }
        Arrays.sort(window);
        Answers.near("median", x, out.plane(0)[out.at(x, y)], window[window.length / 2]);
      }
    }
  }

  @Benchmark
  public Planes median() {
    org.duskply.engine.filter.Median.apply(in, 0, out, 0);
    return out;
  }
}
