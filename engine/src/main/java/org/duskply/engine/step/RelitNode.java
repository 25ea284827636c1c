package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/**
 * The picture below a group with the light that its steps add, treated, and without the light that
 * they take away, which is as it was:
 *
 * <pre>
 * b + T(max(0, g − b)) − max(0, b − g)     per channel
 * </pre>
 *
 * <p>Where the steps do nothing and the treatment leaves black black, the bits of {@code b} stay.
 */
final class RelitNode implements PointNode {
  private final Node below;
  private final Node folded;
  private final Node added;

  /**
   * A picture lit anew.
   *
   * @param below the picture below the group: b
   * @param folded what the group's steps make of it: g
   * @param added the treated light: T(max(0, g − b))
   */
  RelitNode(Node below, Node folded, Node added) {
    this.below = below;
    this.folded = folded;
    this.added = added;
  }

  @Override
  public List<Node> inputs() {
    return List.of(below, folded, added);
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
      float[] light = in[2][p];
      float[] relit = out[p];
      for (int i = from; i < to; i++) {
        relit[i] = b[i] + light[i] - Math.max(0f, b[i] - g[i]);
      }
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("relit");
  }
}
