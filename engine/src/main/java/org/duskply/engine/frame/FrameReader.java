package org.duskply.engine.frame;

import java.util.List;
import org.duskply.engine.pixel.Region;

/**
 * Reads the units of one frame. A reader of a {@link FrameSource.Access#RANDOM} source may be used
 * by several threads at once; one of a {@link FrameSource.Access#FORWARD} source by one thread at a
 * time, best in rising order of units (units left out are passed over, a lower unit starts again
 * from the top).
 */
public interface FrameReader extends AutoCloseable {
  /**
   * The native samples of unit {@code unit}.
   *
   * @throws FrameException if the file is damaged or lies about itself; the sentence names the file
   *     and the first bad row
   */
  Samples read(int unit);

  /**
   * The native samples of at least {@code part} of unit {@code unit}: what lies outside may be left
   * out, and what is odd about it may stay unnoticed.
   *
   * @param part some pixels of the unit, at least one
   * @throws FrameException as above
   */
  default Samples read(int unit, Region part) {
    return read(unit);
  }

  /**
   * Sentences about odd things that were met while reading and that do not stop the pixels from
   * being right.
   */
  default List<String> notices() {
    return List.of();
  }

  @Override
  void close();
}
