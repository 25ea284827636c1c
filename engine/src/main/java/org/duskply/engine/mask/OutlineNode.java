package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/**
 * The inside of an outline as a mask: each pixel by the exact share of its area. Reaches beyond the
 * canvas as far as it is asked.
 */
final class OutlineNode implements AreaNode, Boundless {
  private final OutlineRaster raster;
  private final String identity;

  /**
   * A mask of an outline.
   *
   * @param identity stands for the outline in content keys
   */
  OutlineNode(OutlineRaster raster, String identity) {
    this.raster = raster;
    this.identity = identity;
  }

  @Override
  public List<Node> inputs() {
    return List.of();
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    return within.empty()
        ? Region.EMPTY
        : raster.boundsWithin(within.top(), within.bottom()).meet(within);
  }

  @Override
  public Region needs(int input, Region out) {
    throw new IndexOutOfBoundsException(input);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    raster.fill(out, 0);
  }

  @Override
  public boolean cheap() {
    return raster.simple();
  }

  @Override
  public float uniform(Region region) {
    return raster.uniform(region);
  }

  @Override
  public long scratchBytes(Region out) {
    return raster.scratchBytes(out.width());
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("outline").word(identity);
  }
}
