package org.duskply.benchmarks.kernels;

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
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.NamedSpace;

/** A frame of 16 bits that stands in memory: a view of {@link Square}'s size, in sRGB. */
final class ViewFrame implements FrameSource {
  private static final double FULL = 65535;

  private final int number;
  private final Samples samples;

  /** Another view for each number. */
  ViewFrame(int number) {
    this.number = number;
    float[][] view = Content.VIEW.picture(Square.PIXELS, number);
    short[] codes = new short[3 * Square.PIXELS];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = (short) Math.round(FULL * Math.max(0, Math.min(1, view[i % 3][i / 3])));
    }
    samples = Samples.of(Square.AREA, 3, codes);
  }

  /** The frame in a graph. */
  FrameNode node() {
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    Lineariser lineariser = Lineariser.prepare(info(), srgb, srgb, 0);
    return new FrameNode("view " + number, this, lineariser, 1, "view " + number, "");
  }

  /** A pixel in linear light, by the formula; beyond the edge that of the edge. */
  double[] linear(int x, int y) {
    int column = Math.max(0, Math.min(Square.SIDE - 1, x));
    int row = Math.max(0, Math.min(Square.SIDE - 1, y));
    double[] pixel = new double[3];
    for (int c = 0; c < 3; c++) {
      int code = samples.shorts()[samples.at(column, row) + c] & 0xFFFF;
      pixel[c] = EncodedAxis.decode(code / FULL);
    }
    return pixel;
  }

  @Override
  public FrameInfo info() {
    return new FrameInfo(
        Square.SIDE,
        Square.SIDE,
        3,
        FrameInfo.Alpha.NONE,
        Samples.Kind.SHORTS,
        FULL,
        null,
        null,
        Exif.NONE,
        List.of());
  }

  @Override
  public Access access() {
    return Access.RANDOM;
  }

  @Override
  public String reason() {
    return "in memory";
  }

  @Override
  public int units() {
    return 1;
  }

  @Override
  public Region unit(int index) {
    return Square.AREA;
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
        return samples;
      }

      @Override
      public void close() {}
    };
  }
}
