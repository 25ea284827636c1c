package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.filter.Gaussian;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/** A mask softened by a Gaussian; beyond the canvas it reads what {@link Border} says. */
final class FeatherNode implements AreaNode, Border.Reader {
  private final Node input;
  private final double radius;
  private final Gaussian gaussian;
  private final Border border;

  /**
   * A softened mask.
   *
   * @param radius of the Gaussian in pixels of the canvas; σ is half of it
   * @param canvas all pixels of the picture
   */
  FeatherNode(Node input, double radius, Region canvas) {
    this.input = input;
    this.radius = radius;
    this.gaussian = Gaussian.of(radius);
    this.border = Border.of(input, canvas);
  }

  @Override
  public Border border() {
    return border;
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
    return border.footprint(gaussian.needs(within)).grow(gaussian.reach()).meet(within);
  }

  @Override
  public Region needs(int index, Region out) {
    return border.reads(gaussian.needs(out));
  }

  /** What it is made from is all the same: so is what it becomes. */
  @Override
  public float uniform(Region region) {
    Region read = border.reads(gaussian.needs(region));
    return read.empty() ? Float.NaN : input.uniform(read);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    gaussian.apply(border.continued(in.get(0), gaussian.needs(out.area())), 0, out, 0);
  }

  @Override
  public long scratchBytes(Region out) {
    return gaussian.scratchBytes(out) + border.scratchBytes(gaussian.needs(out));
  }

  @Override
  public int reach() {
    return gaussian.reach();
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("feather").number(radius);
    border.describe(key);
  }
}
