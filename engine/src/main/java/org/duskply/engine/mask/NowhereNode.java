package org.duskply.engine.mask;

import java.util.Arrays;
import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** The mask that is 0 everywhere. */
final class NowhereNode implements PointNode, Boundless {
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
    return Region.EMPTY;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    Arrays.fill(out[0], from, to, 0f);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("nowhere");
  }
}
