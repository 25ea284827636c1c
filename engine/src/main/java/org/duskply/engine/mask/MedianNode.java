package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.filter.Median;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/** The 5 × 5 median of values read off frames: specks go, edges stay. */
final class MedianNode implements AreaNode {
  private final Node input;
  private final Border border;

  /**
   * The median of {@code input}.
   *
   * @param canvas all pixels of the picture
   */
  MedianNode(Node input, Region canvas) {
    this.input = input;
    this.border = Border.of(input, canvas);
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
    return within;
  }

  @Override
  public Region needs(int index, Region out) {
    return border.reads(Median.needs(out));
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    Median.apply(border.continued(in.get(0), Median.needs(out.area())), 0, out, 0);
  }

  @Override
  public long scratchBytes(Region out) {
    return Median.scratchBytes() + border.scratchBytes(Median.needs(out));
  }

  @Override
  public int reach() {
    return Median.REACH;
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("median");
    border.describe(key);
  }
}
