package org.duskply.engine.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** An area node. */
final class AreaStage implements Stage {
  private static final double NANOS_A_PIXEL = 12;

  private final AreaNode node;
  private final int[] inputs;
  private final boolean known;

  /**
   * The stage of a node.
   *
   * @param known whether it is not made where its value is known
   */
  AreaStage(AreaNode node, Index index, boolean known) {
    this.node = node;
    this.known = known;
    this.inputs = node.inputs().stream().mapToInt(index::stage).toArray();
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public void needs(Region out, StageNeeds needs) {
    if (!Float.isNaN(uniform(out))) {
      return;
    }
    for (int i = 0; i < inputs.length; i++) {
      Node input = node.inputs().get(i);
      Region part = node.needs(i, out);
      needs.stage(inputs[i], input.planes() == 1 ? input.footprint(part) : part);
    }
  }

  @Override
  public void fill(StageInputs in, Planes out, Stop stop) {
    stop.check();
    float uniform = uniform(out.area());
    if (!Float.isNaN(uniform)) {
      for (int p = 0; p < out.count(); p++) {
        Arrays.fill(out.plane(p), uniform);
      }
      return;
    }
    List<Planes> blocks = new ArrayList<>();
    for (int i = 0; i < inputs.length; i++) {
      blocks.add(in.block(inputs[i], node.needs(i, out.area())));
    }
    node.fill(blocks, out);
  }

  /** The one value over {@code out}, NaN where that is not known or must not be used. */
  private float uniform(Region out) {
    return known ? node.uniform(out) : Float.NaN;
  }

  @Override
  public boolean full(Region out) {
    return mask() && uniform(out) == 1f;
  }

  @Override
  public long scratchBytes(Region out) {
    if (!Float.isNaN(uniform(out))) {
      return 0;
    }
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
