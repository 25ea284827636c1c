package org.duskply.engine.deliver;

import java.util.List;
import org.duskply.engine.filter.Resampler;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.Size;

/**
 * A finished picture, or a part of it, at another size. Its canvas is its own. What lies outside
 * the part is not looked at: a crop has borders like any picture.
 */
public final class ResizeNode implements AreaNode {
  private final Node picture;
  private final Region part;
  private final Size size;
  private final Resampler resampler;

  /**
   * A picture resized.
   *
   * @param picture the whole of it
   * @param extent which part, and its size in the result
   */
  public ResizeNode(Node picture, Extent extent) {
    this.picture = picture;
    this.part = extent.part();
    this.size = extent.size();
    this.resampler = Resampler.of(part.width(), part.height(), size.width(), size.height());
  }

  @Override
  public List<Node> inputs() {
    return List.of(picture);
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public Region footprint(Region within) {
    return within.meet(Region.ofSize(size.width(), size.height()));
  }

  @Override
  public Region needs(int input, Region out) {
    return resampler.needs(out).move(part.left(), part.top());
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    resampler.apply(in.get(0).moved(-part.left(), -part.top()), out);
  }

  @Override
  public long scratchBytes(Region out) {
    return resampler.scratchBytes(out);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("resize").number(size.width()).number(size.height());
    key.number(part.left()).number(part.top()).number(part.right()).number(part.bottom());
  }
}
