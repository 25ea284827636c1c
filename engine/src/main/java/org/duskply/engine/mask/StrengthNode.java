package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** A mask times a number: {@code strength}. */
final class StrengthNode implements PointNode {
  private final Node mask;
  private final float strength;

  StrengthNode(Node mask, float strength) {
    this.mask = mask;
    this.strength = strength;
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
  public Region footprint(Region within) {
    return mask.footprint(within);
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] values = in[0][0];
    float[] weaker = out[0];
    for (int i = from; i < to; i++) {
      weaker[i] = values[i] * strength;
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("strength").number(strength);
  }
}
