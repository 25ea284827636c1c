package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** A mask multiplied by the rest of another, {@code a·(1 − b)}: {@code except}. */
final class ExceptNode implements PointNode {
  private final Node mask;
  private final Node other;

  ExceptNode(Node mask, Node other) {
    this.mask = mask;
    this.other = other;
  }

  @Override
  public List<Node> inputs() {
    return List.of(mask, other);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    return mask.footprint(within);
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] a = in[0][0];
    float[] b = in[1][0];
    float[] rest = out[0];
    for (int i = from; i < to; i++) {
      rest[i] = a[i] * (1f - b[i]);
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("except");
  }
}
