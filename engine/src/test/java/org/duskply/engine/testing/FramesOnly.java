package org.duskply.engine.testing;

import java.util.List;
import java.util.Optional;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.mask.MaskSources;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.NamedSpace;

/**
 * Frames for masks, in linear sRGB, and nothing else.
 *
 * @param frames called by their numbers; the first is the base
 */
public record FramesOnly(List<FrameNode> frames) implements MaskSources {
  /** No frames: for masks that are drawn. */
  public static final FramesOnly NONE = new FramesOnly(List.of());

  @Override
  public FrameNode frame(String name) {
    return frames.get(Integer.parseInt(name));
  }

  @Override
  public FrameNode base() {
    return frames.get(0);
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
