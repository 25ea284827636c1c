package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/**
 * One minus a mask: {@code inverted}. It shows wherever the mask does not, so its footprint is all
 * that is asked for.
 */
final class InvertedNode implements PointNode {
  private final Node mask;

  InvertedNode(Node mask) {
    this.mask = mask;
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
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] values = in[0][0];
    float[] rest = out[0];
    for (int i = from; i < to; i++) {
      rest[i] = 1f - values[i];
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("inverted");
  }
}
