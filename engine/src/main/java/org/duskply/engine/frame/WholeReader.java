package org.duskply.engine.frame;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/** Reads units of a part of a picture that is decoded once, and let go when this is closed. */
final class WholeReader implements FrameReader {
  private final WholeFrame source;
  private final FrameFile file;
  private final Region part;
  private final List<String> notices = new ArrayList<>();
  private @Nullable Object held;

  WholeReader(WholeFrame source, FrameFile file, Region part) {
    this.source = source;
    this.file = file;
    this.part = part;
  }

  @Override
  public Samples read(int unit) {
    return read(unit, source.unit(unit));
  }

  @Override
  public Samples read(int unit, Region wanted) {
    Samples samples = source.cut(held(), part, source.returned(unit, wanted).meet(part));
    file.counters().countUnit();
    return samples;
  }

  private synchronized Object held() {
    Object there = held;
    if (there == null) {
      notices.clear();
      there = source.decode(file, part, notices);
      held = there;
    }
    return there;
  }

  @Override
  public synchronized List<String> notices() {
    return List.copyOf(notices);
  }

  @Override
  public synchronized void close() {
    held = null;
    file.close();
  }
}
