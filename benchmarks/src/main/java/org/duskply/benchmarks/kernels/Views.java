package org.duskply.benchmarks.kernels;

import java.util.List;
import org.duskply.engine.testing.FramesOnly;

/** Two frames for masks, called 0 and 1, of which the first is the base. */
final class Views {
  /** Always the same. */
  static final Views ALL = new Views();

  private final List<ViewFrame> views = List.of(new ViewFrame(0), new ViewFrame(1));
  private final FramesOnly frames = new FramesOnly(views.stream().map(ViewFrame::node).toList());

  private Views() {}

  /** The frames as masks find them. */
  FramesOnly frames() {
    return frames;
  }

  /** A pixel of a frame in linear light, by the formula. */
  double[] linear(int frame, int x, int y) {
    return views.get(frame).linear(x, y);
  }
}
