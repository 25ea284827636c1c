package org.duskply.engine.deliver;

import java.util.List;
import org.duskply.engine.filter.Resampler;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.Size;

/** A finished picture at another size. Its canvas is its own. */
public final class ResizeNode implements AreaNode {
  private final Node picture;
  private final Size size;
  private final Resampler resampler;

  /**
   * A picture resized.
   *
   * @param width columns of {@code picture}
   * @param height rows of {@code picture}
   * @param size columns and rows of the result
   */
  public ResizeNode(Node picture, int width, int height, Size size) {
    this.picture = picture;
    this.size = size;
    this.resampler = Resampler.of(width, height, size.width(), size.height());
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
    return resampler.needs(out);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    resampler.apply(in.get(0), out);
  }

  @Override
  public long scratchBytes(Region out) {
    return resampler.scratchBytes(out);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("resize").number(size.width()).number(size.height());
  }
}
