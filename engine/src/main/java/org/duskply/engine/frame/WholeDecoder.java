package org.duskply.engine.frame;

import java.util.List;
import java.util.function.Consumer;
import org.duskply.engine.pixel.Region;

/** Decodes a picture from its top down. */
interface WholeDecoder {
  /**
   * Decodes a part of the picture as it is stored.
   *
   * @param in the open file
   * @param part of the stored picture; what else is decoded does not matter
   * @param rows takes every row of the part once, from the top, some at a time, with all its
   *     columns
   * @param notices takes sentences about odd things that do not stop the pixels from being right
   * @throws FrameException if the file is damaged
   */
  void decode(FrameFile in, Region part, Consumer<Samples> rows, List<String> notices);
}
