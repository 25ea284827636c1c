package org.duskply.engine.testing;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.mask.MaskSources;
import org.duskply.engine.plan.FrameNode;

/** Frames that masks may be read off; no painted files, and no names of steps. */
public record FramesForMasks(Map<String, FrameNode> frames, ColourSpace working) implements MaskSources {
  @Override
  public FrameNode frame(String name) {
    return Objects.requireNonNull(frames.get(name), name);
  }

  @Override
  public FrameNode base() {
    return frames.values().iterator().next();
  }

  @Override
  public FrameNode painted(String file) {
    throw new IllegalArgumentException("No painted mask " + file);
  }

  @Override
  public Optional<String> step(String name) {
    return Optional.empty();
  }
}
