package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** The light that a group's steps add to the picture below: {@code max(0, g − b)} per channel. */
final class AddedLightNode implements PointNode {
  private final Node below;
  private final Node folded;

  /**
   * Light that is added.
   *
   * @param below the picture below the group: b
   * @param folded what the group's steps make of it: g
   */
  AddedLightNode(Node below, Node folded) {
    this.below = below;
    this.folded = folded;
  }

  @Override
  public List<Node> inputs() {
    return List.of(below, folded);
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    for (int p = 0; p < 3; p++) {
      float[] b = in[0][p];
      float[] g = in[1][p];
      float[] added = out[p];
      for (int i = from; i < to; i++) {
        added[i] = Math.max(0f, g[i] - b[i]);
      }
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("added");
  }
}
