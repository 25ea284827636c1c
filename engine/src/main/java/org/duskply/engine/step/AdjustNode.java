package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.adjust.AdjustKernel;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** A list of adjustments done to a picture, or to a frame on its way in. */
final class AdjustNode implements PointNode {
  private final Node input;
  private final AdjustKernel kernel;
  private final String identity;

  /**
   * Adjustments.
   *
   * @param identity stands for the adjustments and their working space in content keys
   */
  AdjustNode(Node input, AdjustKernel kernel, String identity) {
    this.input = input;
    this.kernel = kernel;
    this.identity = identity;
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
    }
    kernel.run(out[0], out[1], out[2], from, to);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("adjust").word(identity);
  }
}
