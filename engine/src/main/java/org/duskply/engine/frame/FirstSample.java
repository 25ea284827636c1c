package org.duskply.engine.frame;

import java.util.List;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.engine.pixel.Region;

/**
 * A picture file as the first sample of each pixel alone: a painted mask. Its colour profile and
 * transparency are left out.
 */
public final class FirstSample implements FrameSource {
  private final FrameSource source;
  private final FrameInfo info;

  /** The first samples of a file. */
  public FirstSample(FrameSource source) {
    this.source = source;
    FrameInfo all = source.info();
    this.info =
        new FrameInfo(
            all.width(),
            all.height(),
            1,
            Alpha.NONE,
            all.kind(),
            all.fullScale(),
            null,
            null,
            all.exif(),
            all.notices());
  }

  @Override
  public FrameInfo info() {
    return info;
  }

  @Override
  public Access access() {
    return source.access();
  }

  @Override
  public String reason() {
    return source.reason();
  }

  @Override
  public int units() {
    return source.units();
  }

  @Override
  public Region unit(int index) {
    return source.unit(index);
  }

  @Override
  public Region returned(int index, Region part) {
    return source.returned(index, part);
  }

  @Override
  public long workingBytes() {
    long most = 0;
    for (int u = 0; u < units(); u++) {
      most = Math.max(most, unit(u).count());
    }
    return source.workingBytes() + most * source.info().channels() * info.kind().bytes();
  }

  @Override
  public long cursorBytes() {
    return source.cursorBytes();
  }

  @Override
  public long workingBytes(Region part) {
    return workingBytes() - source.workingBytes() + source.workingBytes(part);
  }

  @Override
  public long cursorBytes(Region part) {
    return source.cursorBytes(part);
  }

  @Override
  public FrameReader reader() {
    return first(source.reader());
  }

  @Override
  public FrameReader reader(Region part) {
    return first(source.reader(part));
  }

  private static FrameReader first(FrameReader reader) {
    return new FrameReader() {
      @Override
      public Samples read(int unit) {
        return first(reader.read(unit));
      }

      @Override
      public Samples read(int unit, Region part) {
        return first(reader.read(unit, part));
      }

      @Override
      public List<String> notices() {
        return reader.notices();
      }

      @Override
      public void close() {
        reader.close();
      }
    };
  }

  private static Samples first(Samples all) {
    int step = all.channels();
    if (step == 1) {
      return all;
    }
    int count = Math.toIntExact(all.area().count());
    switch (all.kind()) {
      case BYTES -> {
        byte[] first = new byte[count];
        for (int i = 0; i < count; i++) {
          first[i] = all.bytes()[i * step];
        }
        return Samples.of(all.area(), 1, first);
      }
      case SHORTS -> {
        short[] first = new short[count];
        for (int i = 0; i < count; i++) {
          first[i] = all.shorts()[i * step];
        }
        return Samples.of(all.area(), 1, first);
      }
      default -> {
        float[] first = new float[count];
        for (int i = 0; i < count; i++) {
          first[i] = all.floats()[i * step];
        }
        return Samples.of(all.area(), 1, first);
      }
    }
  }
}
