package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** The greatest of several masks: {@code any-of}. */
final class GreatestNode implements PointNode {
  private final List<Node> members;

  GreatestNode(List<Node> members) {
    this.members = List.copyOf(members);
  }

  @Override
  public List<Node> inputs() {
    return members;
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    Region all = Region.EMPTY;
    for (Node member : members) {
      all = all.hull(member.footprint(within));
    }
    return all;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] greatest = out[0];
    System.arraycopy(in[0][0], from, greatest, from, to - from);
    for (int m = 1; m < in.length; m++) {
      float[] values = in[m][0];
      for (int i = from; i < to; i++) {
        greatest[i] = Math.max(greatest[i], values[i]);
      }
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("any-of").number(members.size());
  }
}
