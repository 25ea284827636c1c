package org.duskply.engine.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/** An area node, and those of its inputs that are no stages: they are made on the way. */
final class AreaStage implements Stage {
  private static final double NANOS_A_PIXEL = 12;
  private static final double NANOS_A_PIXEL_MADE = 1;
  private static final int NO_STAGE = -1;

  private final AreaNode node;
  private final int[] inputs;
  private final boolean known;

  /**
   * The stage of a node.
   *
   * @param staged whether an input is a stage; else it is an area node without inputs
   * @param known whether it is not made where its value is known
   */
  AreaStage(AreaNode node, Index index, Predicate<Node> staged, boolean known) {
    this.node = node;
    this.known = known;
    this.inputs =
        node.inputs().stream()
            .mapToInt(input -> staged.test(input) ? index.stage(input) : NO_STAGE)
            .toArray();
  }

  /** An input that is made on the way; absent where it is a stage. */
  private @Nullable AreaNode inline(int input) {
    return inputs[input] == NO_STAGE ? (AreaNode) node.inputs().get(input) : null;
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
      if (inputs[i] == NO_STAGE) {
        continue;
      }
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
      blocks.add(input(in, i, node.needs(i, out.area())));
    }
    node.fill(blocks, out);
  }

  private Planes input(StageInputs in, int input, Region part) {
    AreaNode inline = inline(input);
    if (inline == null) {
      return in.block(inputs[input], part);
    }
    Planes block = new Planes(part, inline.planes());
    if (!part.empty()) {
      inline.fill(List.of(), block);
    }
    return block;
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
      Region part = node.needs(i, out);
      AreaNode inline = inline(i);
      bytes += Planes.bytes(part, node.inputs().get(i).planes());
      bytes += inline == null ? 0 : inline.scratchBytes(part);
    }
    return bytes;
  }

  @Override
  public double costNanos(Region out) {
    double nanos = NANOS_A_PIXEL * out.count();
    for (int i = 0; i < inputs.length; i++) {
      nanos += inputs[i] == NO_STAGE ? NANOS_A_PIXEL_MADE * node.needs(i, out).count() : 0;
    }
    return nanos;
  }
}
