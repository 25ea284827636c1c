package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.filter.Widening;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/** A mask whose outline is moved outward or inward; beyond the canvas as {@link Border} says. */
final class WidenNode implements AreaNode, Border.Reader {
  private final Node input;
  private final double by;
  private final Widening widening;
  private final Border border;

  /**
   * A mask with its outline moved.
   *
   * @param by pixels of the canvas outward, inward below 0
   * @param canvas all pixels of the picture
   */
  WidenNode(Node input, double by, Region canvas) {
    this.input = input;
    this.by = by;
    this.widening = Widening.of(by);
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
    return border.footprint(widening.needs(within)).grow(widening.growth()).meet(within);
  }

  @Override
  public Region needs(int index, Region out) {
    return border.reads(widening.needs(out));
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    if (!out.area().empty()) {
      widening.apply(border.continued(in.get(0), widening.needs(out.area())), out);
    }
  }

  @Override
  public long scratchBytes(Region out) {
    return widening.scratchBytes(out) + border.scratchBytes(widening.needs(out));
  }

  @Override
  public int reach() {
    return widening.reach();
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("widen").number(by);
    border.describe(key);
  }
}
