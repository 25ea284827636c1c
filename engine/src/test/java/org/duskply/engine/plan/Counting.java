package org.duskply.engine.plan;

import java.util.List;
import java.util.concurrent.atomic.LongAdder;

/** A step that takes a quarter of the light, and counts the pixels it is computed for. */
record Counting(Node below, LongAdder pixels) implements PointNode {
  @Override
  public List<Node> inputs() {
    return List.of(below);
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    pixels.add(to - from);
    for (int p = 0; p < 3; p++) {
      for (int i = from; i < to; i++) {
        out[p][i] = 0.75f * in[0][p][i];
      }
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("counting");
  }
}
