package org.duskply.engine.plan;

import java.util.List;
import java.util.concurrent.atomic.LongAdder;
import org.duskply.engine.pixel.Region;

/** A mask of a picture that shows in a box alone, and counts how often it is described. */
record InBox(Node picture, Region box, LongAdder looks) implements PointNode {
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
    return box.meet(within);
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    throw new UnsupportedOperationException();
  }

  @Override
  public void describe(KeyWriter key) {
    looks.increment();
    key.word("in box").region(box);
  }
}
