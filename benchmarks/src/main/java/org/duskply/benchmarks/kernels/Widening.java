package org.duskply.benchmarks.kernels;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** The outline of a disc moved outward, or inward below 0. */
@OperationsPerInvocation(Square.PIXELS)
public class Widening extends Megapixels {
  private static final double MIDDLE = Square.SIDE / 2.0;
  private static final double RADIUS = 300;

  @Param({"-8", "3", "40"})
  public int by;

  private org.duskply.engine.filter.Widening widening = org.duskply.engine.filter.Widening.of(0);
  private Planes in = new Planes(Region.EMPTY, 1);
  private final Planes out = new Planes(Square.AREA, 1);

  @Setup
  public void prepare() {
    widening = org.duskply.engine.filter.Widening.of(by);
    in = new Planes(widening.needs(Square.AREA), 1);
    disc(in, RADIUS);
    widen();
    Planes want = new Planes(Square.AREA, 1);
    disc(want, RADIUS + by);
    for (int i = 0; i < Square.PIXELS; i++) {
      // A pixel's share of so flat an arc is that of the straight line there, which is the distance
      // up to 0.07; the moved outline is 0.02 off at most.
      Close.within("widened at " + i, out.plane(0)[i], want.plane(0)[i], 0.1);
    }
  }

  private static void disc(Planes planes, double radius) {
    Region area = planes.area();
    for (int y = area.top(); y < area.bottom(); y++) {
      for (int x = area.left(); x < area.right(); x++) {
        double distance = StrictMath.hypot(x + 0.5 - MIDDLE, y + 0.5 - MIDDLE);
        double share = Math.max(0, Math.min(1, radius - distance + 0.5));
        planes.plane(0)[planes.at(x, y)] = (float) share;
      }
    }
  }

  @Benchmark
  public Planes widen() {
    widening.apply(in, out);
    return out;
  }
}
