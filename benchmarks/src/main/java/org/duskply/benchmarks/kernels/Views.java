package org.duskply.benchmarks.kernels;

import java.util.Optional;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.mask.MaskSources;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.NamedSpace;

/** Two frames for masks, called 0 and 1, of which the first is the base. */
final class Views implements MaskSources {
  /** Always the same. */
  static final Views ALL = new Views();

  private final ViewFrame[] views = {new ViewFrame(0), new ViewFrame(1)};
  private final FrameNode[] nodes = {views[0].node(), views[1].node()};

  private Views() {}

  /** A pixel of a frame in linear light, by the formula. */
  double[] linear(int frame, int x, int y) {
    return views[frame].linear(x, y);
  }

  @Override
  public FrameNode frame(String name) {
    return nodes[Integer.parseInt(name)];
  }

  @Override
  public FrameNode base() {
    return nodes[0];
  }

  @Override
  public ColourSpace working() {
    return ColourSpace.of(NamedSpace.SRGB);
  }

  @Override
  public FrameNode painted(String file) {
    throw new UnsupportedOperationException(file);
  }

  @Override
  public Optional<String> step(String name) {
    return Optional.empty();
  }
}
