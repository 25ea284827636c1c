package org.duskply.engine;

import java.util.List;
import java.util.UUID;
import net.imglib2.RandomAccess;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.type.numeric.RealType;
import net.imglib2.type.numeric.integer.UnsignedByteType;
import net.imglib2.type.numeric.integer.UnsignedShortType;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.ReadsAs;
import org.jspecify.annotations.Nullable;

/**
 * A frame that the caller holds as an ImgLib2 image, in place of a file: width × height for grey,
 * width × height × 2 for grey and alpha, × 3 for red, green and blue, × 4 for these and alpha,
 * which colours are not multiplied by. 8- and 16-bit unsigned samples are encoded values over full
 * scale, in the colour space that the recipe's {@code profile} names, else sRGB; all other real
 * types are linear light, 1 being white, unless the recipe says {@code reads-as: encoded}. The
 * image must not change while it is used, and must bear being read by several threads at once, each
 * with its own accessor. Every key of a frame means the same as for a file.
 */
public final class MemoryFrame {
  private static final int UNIT_ROWS = 64;

  private final Source<?> source;
  private final String identity = "memory " + UUID.randomUUID();

  private MemoryFrame(Source<?> source) {
    this.source = source;
  }

  /**
   * A frame of an image.
   *
   * @throws IllegalArgumentException if the image is of another shape, empty, or does not begin at
   *     0
   */
  public static <T extends RealType<T>> MemoryFrame of(RandomAccessibleInterval<T> image) {
    int n = image.numDimensions();
    boolean shape = n == 2 || n == 3 && image.dimension(2) >= 1 && image.dimension(2) <= 4;
    if (!shape || image.dimension(0) < 1 || image.dimension(1) < 1) {
      throw new IllegalArgumentException(
          "A frame is width × height, or width × height × 1 to 4, at least one pixel");
    }
    for (int d = 0; d < n; d++) {
      if (image.min(d) != 0) {
        throw new IllegalArgumentException("A frame begins at 0 in every dimension");
      }
    }
    return new MemoryFrame(new Source<>(image, Exif.NONE));
  }

  /**
   * The same frame with what the camera was set to, which {@code match} needs.
   *
   * @param seconds shutter time, above 0
   * @param fNumber aperture, above 0
   * @param iso sensitivity, above 0
   */
  public MemoryFrame takenWith(double seconds, double fNumber, int iso) {
    if (!(seconds > 0 && fNumber > 0 && iso > 0) || Double.isInfinite(seconds * fNumber)) {
      throw new IllegalArgumentException("taken with " + seconds + " s, f/" + fNumber + ", " + iso);
    }
    return new MemoryFrame(source.with(new Exif(null, seconds, fNumber, iso, null)));
  }

  FrameSource source() {
    return source;
  }

  String identity() {
    return identity;
  }

  /** What its numbers are where the recipe does not say it. */
  @Nullable ReadsAs readsAs() {
    return source.info().kind() == Samples.Kind.FLOATS ? ReadsAs.LINEAR : null;
  }

  /** The image as a source of units. */
  private static final class Source<T extends RealType<T>> implements FrameSource {
    private final RandomAccessibleInterval<T> image;
    private final FrameInfo info;

    Source(RandomAccessibleInterval<T> image, Exif exif) {
      this.image = image;
      Samples.Kind kind = kind(image.getType());
      int channels = image.numDimensions() == 2 ? 1 : (int) image.dimension(2);
      this.info =
          new FrameInfo(
              Math.toIntExact(image.dimension(0)),
              Math.toIntExact(image.dimension(1)),
              channels,
              channels % 2 == 0 ? FrameInfo.Alpha.STRAIGHT : FrameInfo.Alpha.NONE,
              kind,
              kind == Samples.Kind.BYTES ? 255 : kind == Samples.Kind.SHORTS ? 65535 : 1,
              null,
              null,
              exif,
              List.of());
    }

    Source<T> with(Exif exif) {
      return new Source<>(image, exif);
    }

    private static Samples.Kind kind(Object type) {
      if (type instanceof UnsignedByteType) {
        return Samples.Kind.BYTES;
      }
      return type instanceof UnsignedShortType ? Samples.Kind.SHORTS : Samples.Kind.FLOATS;
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
      return "It is read from memory, any rows at any time.";
    }

    @Override
    public int units() {
      return (info.height() + UNIT_ROWS - 1) / UNIT_ROWS;
    }

    @Override
    public Region unit(int index) {
      return Region.ofSize(info.width(), info.height())
          .rows(index * UNIT_ROWS, (index + 1) * UNIT_ROWS);
    }

    @Override
    public Region returned(int index, Region part) {
      return part;
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
          return samples(unit(unit));
        }

        @Override
        public Samples read(int unit, Region part) {
          return samples(part);
        }

        @Override
        public void close() {}
      };
    }

    private Samples samples(Region area) {
      int channels = info.channels();
      float[] values = new float[Math.toIntExact(area.count() * channels)];
      RandomAccess<T> at = image.randomAccess();
      for (int c = 0; c < channels; c++) {
        if (image.numDimensions() == 3) {
          at.setPosition(c, 2);
        }
        for (int y = area.top(); y < area.bottom(); y++) {
          at.setPosition(y, 1);
          at.setPosition(area.left(), 0);
          int i = (y - area.top()) * area.width() * channels + c;
          for (int x = 0; x < area.width(); x++, i += channels) {
            values[i] = at.get().getRealFloat();
            at.fwd(0);
          }
        }
      }
      return packed(area, values);
    }

    private Samples packed(Region area, float[] values) {
      if (info.kind() == Samples.Kind.BYTES) {
        byte[] bytes = new byte[values.length];
        for (int i = 0; i < bytes.length; i++) {
          bytes[i] = (byte) (int) values[i];
        }
        return Samples.of(area, info.channels(), bytes);
      }
      if (info.kind() == Samples.Kind.SHORTS) {
        short[] shorts = new short[values.length];
        for (int i = 0; i < shorts.length; i++) {
          shorts[i] = (short) (int) values[i];
        }
        return Samples.of(area, info.channels(), shorts);
      }
      return Samples.of(area, info.channels(), values);
    }
  }
}
