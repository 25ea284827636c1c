package org.duskply.engine.frame;

import java.util.List;
import java.util.function.Consumer;

/** Decodes a picture from its first row to its last. */
interface WholeDecoder {
  /**
   * Decodes the picture as it is stored.
   *
   * @param in the open file
   * @param rows takes every row once, from the top, some at a time
   * @param notices takes sentences about odd things that do not stop the pixels from being right
   * @throws FrameException if the file is damaged
   */
  void decode(FrameFile in, Consumer<Samples> rows, List<String> notices);
}
