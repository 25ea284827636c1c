package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.blend.BlendKernel;
import org.duskply.engine.pixel.Held;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/**
 * A frame blended with the picture below: what {@code pop} and {@code lay} make before they are
 * mixed in.
 */
final class BlendNode implements PointNode {
  private final Node below;
  private final Node frame;
  private final String mode;
  private final BlendKernel kernel;
  private final boolean grows;

  /**
   * A blend.
   *
   * @param mode stands for the mode in content keys
   * @param grows whether the result may be brighter than either, and must be {@link Held}
   */
  BlendNode(Node below, Node frame, String mode, BlendKernel kernel, boolean grows) {
    this.below = below;
    this.frame = frame;
    this.mode = mode;
    this.kernel = kernel;
    this.grows = grows;
  }

  @Override
  public List<Node> inputs() {
    return List.of(below, frame);
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    kernel.run(in[0], in[1], out, from, to);
    if (grows) {
      Held.hold(out, from, to);
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("blend").word(mode);
  }
}
