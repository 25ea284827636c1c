package org.duskply.engine.frame;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/** Reads units of a picture that is decoded whole, once, and let go when this is closed. */
final class WholeReader implements FrameReader {
  private final WholeFrame source;
  private final FrameFile file;
  private final List<String> notices = new ArrayList<>();
  private @Nullable Object whole;

  WholeReader(WholeFrame source, FrameFile file) {
    this.source = source;
    this.file = file;
  }

  @Override
  public Samples read(int unit) {
    Region area = source.unit(unit);
    Samples samples = source.cut(whole(), area);
    file.counters().countUnit();
    return samples;
  }

  private synchronized Object whole() {
    Object there = whole;
    if (there == null) {
      notices.clear();
      there = source.decode(file, notices);
      whole = there;
    }
    return there;
  }

  @Override
  public synchronized List<String> notices() {
    return List.copyOf(notices);
  }

  @Override
  public synchronized void close() {
    whole = null;
    file.close();
  }
}
