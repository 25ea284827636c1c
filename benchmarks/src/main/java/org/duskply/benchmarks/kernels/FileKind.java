package org.duskply.benchmarks.kernels;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;

/** Kinds of file: what they are, how deep, and how packed. */
public enum FileKind {
  TIFF16(16, Format.TIFF, Compress.NONE),
  TIFF16_DEFLATE(16, Format.TIFF, Compress.DEFLATE),
  TIFF16_LZW(16, Format.TIFF, Compress.LZW),
  /** Read only. */
  TIFF16_PACKBITS(16, Format.TIFF, Compress.NONE),
  TIFF8(8, Format.TIFF, Compress.NONE),
  TIFF8_DEFLATE(8, Format.TIFF, Compress.DEFLATE),
  TIFF8_LZW(8, Format.TIFF, Compress.LZW),
  /** Read only. */
  TIFF8_PACKBITS(8, Format.TIFF, Compress.NONE),
  PNG16(16, Format.PNG, Compress.NONE),
  PNG8(8, Format.PNG, Compress.NONE),
  JPEG(8, Format.JPEG, Compress.NONE);

  private static final int PACKBITS = 32773;
  private static final int STRIP_ROWS = 16;

  /**
   * What the samples of a JPEG may be off, as a root of mean squares. A coefficient is off by half
   * a step at most, and no step of tables K.1 and K.2 at a tenth is above 12; the cosine transform
   * keeps squares, so that Y, Cb and Cr are off by 6 at most, and blue, Y + 1.772·Cb, by their sum.
   */
  private static final double JPEG_BOUND = 6 * (1 + 1.772);

  private final int depth;
  private final Format format;
  private final Compress compress;

  FileKind(int depth, Format format, Compress compress) {
    this.depth = depth;
    this.format = format;
    this.compress = compress;
  }

  int depth() {
    return depth;
  }

  Format format() {
    return format;
  }

  Compress compress() {
    return compress;
  }

  /** Writes a file of this kind. */
  void write(CodedPicture picture, Path file) throws IOException {
    if (this == TIFF16_PACKBITS || this == TIFF8_PACKBITS) {
      TiffFile tiff =
          new TiffFile(CodedPicture.WIDTH, CodedPicture.HEIGHT, 3, depth, picture::code)
              .compression(PACKBITS)
              .strips(STRIP_ROWS);
      Files.write(file, tiff.bytes());
    } else {
      CodedPicture.write(picture.spec(file, this), picture.bands(), true);
    }
  }

  /** Fails unless a file holds the codes of the picture, or those of a JPEG on the whole. */
  void check(CodedPicture picture, Path file) {
    FrameSource source = FrameSources.open(file);
    double squares = 0;
    try (FrameReader reader = source.reader()) {
      for (int unit = 0; unit < source.units(); unit++) {
        squares += squares(picture, reader.read(unit));
      }
    }
    double off = Math.sqrt(squares / (3 * CodedPicture.PIXELS));
    Close.within(this + " off its codes by", off, 0, format == Format.JPEG ? JPEG_BOUND : 0);
  }

  private double squares(CodedPicture picture, Samples samples) {
    double squares = 0;
    for (int y = samples.area().top(); y < samples.area().bottom(); y++) {
      for (int x = 0; x < CodedPicture.WIDTH; x++) {
        for (int c = 0; c < 3; c++) {
          int at = samples.at(x, y) + c;
          int got = depth == 16 ? samples.shorts()[at] & 0xFFFF : samples.bytes()[at] & 0xFF;
          double off = got - picture.code(x, y, c);
          squares += off * off;
        }
      }
    }
    return squares;
  }
}
