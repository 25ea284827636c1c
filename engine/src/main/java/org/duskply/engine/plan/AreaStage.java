package org.duskply.engine.plan;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** An area node. */
final class AreaStage implements Stage {
  private static final double NANOS_A_PIXEL = 12;

  private final AreaNode node;
  private final int[] inputs;

  AreaStage(AreaNode node, Index index) {
    this.node = node;
    this.inputs = node.inputs().stream().mapToInt(index::stage).toArray();
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public void needs(Region out, StageNeeds needs) {
    for (int i = 0; i < inputs.length; i++) {
      Node input = node.inputs().get(i);
      Region part = node.needs(i, out);
      needs.stage(inputs[i], input.planes() == 1 ? input.footprint(part) : part);
    }
  }

  @Override
  public void fill(StageInputs in, Planes out, Stop stop) {
    stop.check();
    List<Planes> blocks = new ArrayList<>();
    for (int i = 0; i < inputs.length; i++) {
      blocks.add(in.block(inputs[i], node.needs(i, out.area())));
    }
    node.fill(blocks, out);
  }

  @Override
  public long scratchBytes(Region out) {
    long bytes = node.scratchBytes(out);
    for (int i = 0; i < inputs.length; i++) {
      bytes += Planes.bytes(node.needs(i, out), node.inputs().get(i).planes());
    }
    return bytes;
  }

  @Override
  public double costNanos(Region out) {
    return NANOS_A_PIXEL * out.count();
  }
}
