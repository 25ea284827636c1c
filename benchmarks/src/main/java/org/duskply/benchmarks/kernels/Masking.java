package org.duskply.benchmarks.kernels;

import java.util.List;
import java.util.Map;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.TearDown;

/**
 * Masks as a render makes them: rasterised or computed over a whole picture, frames that they look
 * at taken from samples in memory to linear light, and the result cut into runs.
 */
@OperationsPerInvocation(Square.PIXELS)
public class Masking extends Megapixels {
  @Param public Masked mask = Masked.POLYGON;

  private Node node = Views.ALL.frames().base();
  private RegionEvaluator evaluator = evaluator(node);

  @Setup
  public void prepare() {
    Ground ground = new Ground(Square.SIDE, Square.SIDE, 1, Square.AREA);
    node =
        new MaskGraph(Map.of(), ground, Map.of(), Views.ALL.frames())
            .of(Masked.use(mask.kind()), node);
    evaluator = evaluator(node);
    mask.check(make(), Views.ALL);
  }

  private static RegionEvaluator evaluator(Node node) {
    return new RegionEvaluator(Plan.of(List.of(node), PlanSettings.DEFAULT), Long.MAX_VALUE);
  }

  @Benchmark
  public Planes make() {
    return evaluator.compute(node, Square.AREA, Stop.NEVER);
  }

  @TearDown
  public void close() {
    evaluator.close();
  }
}
