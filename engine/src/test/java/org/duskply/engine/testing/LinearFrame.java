package org.duskply.engine.testing;

import java.util.List;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Region;

/** A frame of given floats, which arrive in the engine as they are; with a fourth, its coverage. */
public final class LinearFrame implements FrameSource {
  /** The value of a sample. */
  public interface Value {
    double at(int x, int y, int channel);
  }

  private final FrameInfo info;
  private final Value value;

  /** A frame of 3 channels, or 4 with straight alpha. */
  public LinearFrame(int width, int height, int channels, Value value) {
    this.value = value;
    this.info =
        new FrameInfo(
            width,
            height,
            channels,
            channels == 4 ? FrameInfo.Alpha.STRAIGHT : FrameInfo.Alpha.NONE,
            Samples.Kind.FLOATS,
            1,
            null,
            null,
            Exif.NONE,
            List.of());
  }

  @Override
  public FrameInfo info() {
    return info;
  }

  @Override
  public Access access() {
    return Access.RANDOM;
  }

  @Override
  public String reason() {
    return "given";
  }

  @Override
  public int units() {
    return 1;
  }

  @Override
  public Region unit(int index) {
    return Region.ofSize(info.width(), info.height());
  }

  @Override
  public long workingBytes() {
    return 0;
  }

  @Override
  public long cursorBytes() {
    return 0;
  }

  @Override
  public FrameReader reader() {
    return new FrameReader() {
      @Override
      public Samples read(int unit) {
        return samples();
      }

      @Override
      public void close() {}
    };
  }

  private Samples samples() {
    Region area = unit(0);
    float[] samples = new float[Math.toIntExact(area.count() * info.channels())];
    int i = 0;
    for (int y = 0; y < info.height(); y++) {
      for (int x = 0; x < info.width(); x++) {
        for (int c = 0; c < info.channels(); c++) {
          samples[i++] = (float) value.at(x, y, c);
        }
      }
    }
    return Samples.of(area, info.channels(), samples);
  }
}
