package org.duskply.engine.mask;

import java.util.Arrays;
import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** The mask that is 1 everywhere. */
final class EverywhereNode implements PointNode, Boundless {
  @Override
  public List<Node> inputs() {
    return List.of();
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    Arrays.fill(out[0], from, to, 1f);
  }

  @Override
  public float uniform(Region region) {
    return 1f;
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("everywhere");
  }
}
