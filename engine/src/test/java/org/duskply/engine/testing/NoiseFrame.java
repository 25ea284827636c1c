package org.duskply.engine.testing;

import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.NamedSpace;

/**
 * A frame of 16-bit noise that comes from nowhere: each sample is a hash of seed, place and
 * channel. Some samples are black or full.
 */
public final class NoiseFrame implements FrameSource {
  private final long seed;
  private final FrameInfo info;
  private final int unitRows;
  private final Access access;

  /** A frame without alpha whose units have {@code unitRows} rows. */
  public NoiseFrame(long seed, int width, int height, int unitRows, Access access) {
    this(seed, width, height, 3, unitRows, access);
  }

  /** A frame of 3 channels, or 4 with straight alpha. */
  public NoiseFrame(long seed, int width, int height, int channels, int unitRows, Access access) {
    this.seed = seed;
    this.unitRows = unitRows;
    this.access = access;
    this.info =
        new FrameInfo(
            width,
            height,
            channels,
            channels == 4 ? FrameInfo.Alpha.STRAIGHT : FrameInfo.Alpha.NONE,
            Samples.Kind.SHORTS,
            65535,
            null,
            null,
            Exif.NONE,
            List.of());
  }

  /**
   * It as a node, in linear light of sRGB's primaries.
   *
   * @param stops by which it is made brighter
   */
  public FrameNode node(int stops) {
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    Lineariser lineariser = Lineariser.prepare(info, srgb, srgb, stops);
    String contents = "noise " + seed + " " + info.channels();
    return new FrameNode("f" + seed, this, lineariser, 1, contents, "by " + stops);
  }

  @Override
  public FrameInfo info() {
    return info;
  }

  @Override
  public Access access() {
    return access;
  }

  @Override
  public String reason() {
    return "noise";
  }

  @Override
  public int units() {
    return (info.height() + unitRows - 1) / unitRows;
  }

  @Override
  public Region unit(int index) {
    return Region.ofSize(info.width(), info.height())
        .rows(index * unitRows, (index + 1) * unitRows);
  }

  @Override
  public long workingBytes() {
    return 1000;
  }

  @Override
  public long cursorBytes() {
    return access == Access.FORWARD ? 5000 : 0;
  }

  @Override
  public FrameReader reader() {
    return new FrameReader() {
      @Override
      public Samples read(int unit) {
        return samples(unit(unit));
      }

      @Override
      public void close() {}
    };
  }

  private Samples samples(Region area) {
    int channels = info.channels();
    short[] out = new short[Math.toIntExact(area.count() * channels)];
    int i = 0;
    for (int y = area.top(); y < area.bottom(); y++) {
      for (int x = area.left(); x < area.right(); x++) {
        for (int c = 0; c < channels; c++) {
          out[i++] = sample(x, y, c);
        }
      }
    }
    return Samples.of(area, channels, out);
  }

  private short sample(int x, int y, int c) {
    long h = hash(hash(seed * 31 + x) + 7L * y + c);
    int kind = (int) (h >>> 60);
    return kind == 0 ? 0 : kind == 1 ? (short) 0xFFFF : (short) (h >>> 20);
  }

  private static long hash(long v) {
    long h = v * 0x9E3779B97F4A7C15L;
    h ^= h >>> 32;
    h *= 0xD6E8FEB86659FD93L;
    return h ^ h >>> 32;
  }
}
