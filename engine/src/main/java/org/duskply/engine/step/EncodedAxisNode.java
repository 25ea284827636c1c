package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Held;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/**
 * A picture on its way to the encoded axis ({@link Encoded}), or from there back to light, {@link
 * Held}.
 */
final class EncodedAxisNode implements PointNode {
  private final Node input;
  private final boolean back;

  private EncodedAxisNode(Node input, boolean back) {
    this.input = input;
    this.back = back;
  }

  /** Linear light as encoded values. */
  static Node encoded(Node linear) {
    return new EncodedAxisNode(linear, false);
  }

  /** Encoded values as linear light. */
  static Node linear(Node encoded) {
    return new EncodedAxisNode(encoded, true);
  }

  @Override
  public List<Node> inputs() {
    return List.of(input);
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    for (int p = 0; p < 3; p++) {
      if (out[p] != in[0][p]) {
        System.arraycopy(in[0][p], from, out[p], from, to - from);
      }
      if (back) {
        Encoded.decode(out[p], from, to);
        Held.hold(out[p], from, to);
      } else {
        Encoded.encode(out[p], from, to);
      }
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word(back ? "decode" : "encode");
  }
}
