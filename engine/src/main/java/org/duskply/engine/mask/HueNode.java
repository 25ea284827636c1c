package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.colour.HueWindow;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/**
 * Where a picture is of some hue: {@link HueWindow}, times the coverage of a frame that has one.
 */
final class HueNode implements PointNode {
  private final Node picture;
  private final HueWindow window;
  private final String identity;

  /**
   * A mask of {@code picture}.
   *
   * @param identity stands for the window in content keys
   */
  HueNode(Node picture, HueWindow window, String identity) {
    this.picture = picture;
    this.window = window;
    this.identity = identity;
  }

  @Override
  public List<Node> inputs() {
    return List.of(picture);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[][] rgb = in[0];
    window.weights(rgb[0], rgb[1], rgb[2], out[0], from, to);
    LuminanceNode.covered(rgb, out[0], from, to);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("hue").word(identity);
  }
}
