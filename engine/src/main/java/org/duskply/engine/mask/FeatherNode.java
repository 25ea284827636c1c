package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.filter.Gaussian;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/** A mask softened by a Gaussian. It reads its input beyond the canvas, where outlines go on. */
final class FeatherNode implements AreaNode {
  private final Node input;
  private final double radius;
  private final Gaussian gaussian;

  /**
   * A softened mask.
   *
   * @param radius of the Gaussian in pixels of the canvas; σ is half of it
   */
  FeatherNode(Node input, double radius) {
    this.input = input;
    this.radius = radius;
    this.gaussian = Gaussian.of(radius);
  }

  @Override
  public List<Node> inputs() {
    return List.of(input);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    return input.footprint(gaussian.needs(within)).grow(gaussian.reach()).meet(within);
  }

  @Override
  public Region needs(int index, Region out) {
    return gaussian.needs(out);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    gaussian.apply(in.get(0), 0, out, 0);
  }

  @Override
  public long scratchBytes(Region out) {
    return gaussian.scratchBytes(out);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("feather").number(radius);
  }
}
