package org.duskply.engine;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.mask.MaskSources;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.StepNames;

/** The frames, painted pictures and steps of a recipe for its masks. */
final class MaskInputs implements MaskSources {
  private final Function<String, FrameNode> frames;
  private final String base;
  private final ColourSpace working;
  private final PaintedMasks painted;
  private final int reduction;
  private final StepNames steps;
  private final Map<String, FrameNode> paintedNodes = new HashMap<>();

  /**
   * What the masks of {@code recipe} are made of.
   *
   * @param frames the node of each frame by its name, the same one each time
   * @param working the linear space of frames and pictures
   * @param reduction the {@code n} of a preview's scale {@code 1/n}
   */
  MaskInputs(
      Recipe recipe,
      Function<String, FrameNode> frames,
      ColourSpace working,
      PaintedMasks painted,
      int reduction) {
    this.frames = frames;
    this.base = recipe.base();
    this.working = working;
    this.painted = painted;
    this.reduction = reduction;
    this.steps = StepNames.of(recipe);
  }

  @Override
  public FrameNode frame(String name) {
    return frames.apply(name);
  }

  @Override
  public FrameNode base() {
    return frames.apply(base);
  }

  @Override
  public ColourSpace working() {
    return working;
  }

  @Override
  public FrameNode painted(String file) {
    return paintedNodes.computeIfAbsent(file, f -> painted.node(f, reduction));
  }

  @Override
  public Optional<String> step(String name) {
    return steps.path(name);
  }
}
