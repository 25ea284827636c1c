package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Numbers;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** Stops of added light as a mask: {@code smooth(over/2, over, q)}. */
final class FlashReachNode implements PointNode {
  private final Node stops;
  private final float over;

  FlashReachNode(Node stops, double over) {
    this.stops = stops;
    this.over = (float) over;
  }

  @Override
  public List<Node> inputs() {
    return List.of(stops);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] q = in[0][0];
    float[] m = out[0];
    float none = over / 2;
    for (int i = from; i < to; i++) {
      m[i] = Numbers.smooth(none, over, q[i]);
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("flash").number(over);
  }
}
