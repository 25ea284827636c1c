package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.filter.Resampler;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/** A mask of the grid's size brought to the canvas's, held to 0…1. */
final class ResizedMaskNode implements AreaNode {
  private final Node mask;
  private final Region from;
  private final Region to;
  private final Resampler resampler;

  /**
   * A mask in another size.
   *
   * @param from all its pixels
   * @param to all pixels of the canvas
   */
  ResizedMaskNode(Node mask, Region from, Region to) {
    this.mask = mask;
    this.from = from;
    this.to = to;
    this.resampler = Resampler.of(from.width(), from.height(), to.width(), to.height());
  }

  @Override
  public List<Node> inputs() {
    return List.of(mask);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    return within.meet(to);
  }

  @Override
  public Region needs(int input, Region out) {
    return resampler.needs(out);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    resampler.apply(in.get(0), out);
    float[] m = out.plane(0);
    for (int i = 0; i < m.length; i++) {
      m[i] = Math.max(0f, Math.min(1f, m[i]));
    }
  }

  @Override
  public long scratchBytes(Region out) {
    return resampler.scratchBytes(out);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("resized mask").region(from).region(to);
  }
}
