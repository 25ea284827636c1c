package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/** A painted picture as a mask: its first plane, held to 0…1. */
final class PaintedNode implements PointNode {
  private final FrameNode picture;

  PaintedNode(FrameNode picture) {
    this.picture = picture;
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
  public Region footprint(Region within) {
    return picture.footprint(within);
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] stored = in[0][0];
    float[] m = out[0];
    for (int i = from; i < to; i++) {
      m[i] = Math.max(0f, Math.min(1f, stored[i]));
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("painted");
  }
}
