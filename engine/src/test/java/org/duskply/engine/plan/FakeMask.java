package org.duskply.engine.plan;

import java.util.Arrays;
import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** A mask of one value, or one that reads the pixels around it. */
record FakeMask(List<Node> inputs, int reach, boolean cheap) implements AreaNode {
  static final int SCRATCH = 1000;

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
    return out.grow(reach);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    float sum = 0;
    for (Planes planes : in) {
      sum += planes.plane(0)[0];
    }
    Arrays.fill(out.plane(0), in.isEmpty() ? 0.25f : 2 * sum);
  }

  @Override
  public long scratchBytes(Region out) {
    return SCRATCH;
  }

  @Override
  public void describe(KeyWriter key) {
    key.number(reach);
  }
}
