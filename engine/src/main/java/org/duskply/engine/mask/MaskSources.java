package org.duskply.engine.mask;

import java.util.Optional;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.plan.FrameNode;

/** What masks are made of beside shapes. */
public interface MaskSources {
  /** The frame of that name. */
  FrameNode frame(String name);

  /** The frame that the picture starts from. */
  FrameNode base();

  /** The linear space of frames and pictures. */
  ColourSpace working();

  /** The painted picture in that file, of the grid's or the base's size; the same one each time. */
  FrameNode painted(String file);

  /** The path of the step with that name or place: {@code steps/#4/group/#2}. */
  Optional<String> step(String name);
}
