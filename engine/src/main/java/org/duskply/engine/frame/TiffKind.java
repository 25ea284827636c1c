package org.duskply.engine.frame;

import java.util.List;
import java.util.Set;
import org.duskply.engine.frame.FrameInfo.Alpha;

/**
 * How the samples of a TIFF picture are handed out.
 *
 * @param channels samples a pixel
 * @param samples how they are held
 * @param fullScale the value that stands for 1.0
 * @param palette red, green and blue of each index, 16 bits each, one plane after the other; empty
 *     without palette
 */
record TiffKind(int channels, Samples.Kind samples, double fullScale, long[] palette) {
  /** Compressions that the general reader takes, beside our own three. */
  private static final Set<Integer> OTHERS = Set.of(2, 3, 4, 7, 32773);

  private static final int JPEG = 7;
  private static final int MAX_BITS = 32;

  /**
   * Decides.
   *
   * @throws FrameException naming the tag that stands in the way
   */
  static TiffKind of(ByteSource file, TiffDirectory d, TiffPicture p, List<String> notices) {
    checkCompression(file, p);
    checkWhite(file, p);
    if (p.drops()) {
      notices.add("Extra samples that are not alpha are left out.");
    }
    if (p.photometric() == TiffPicture.PALETTE) {
      return palette(file, d, p, notices);
    }
    if (p.format() == TiffPicture.FLOATS) {
      if (p.bits() != 16 && p.bits() != 32 && p.bits() != 64) {
        throw file.fail("holds floats of " + p.bits() + " bits (tag 258), which are not read");
      }
      return new TiffKind(p.channels(), Samples.Kind.FLOATS, 1, new long[0]);
    }
    return whole(file, p, notices);
  }

  private static TiffKind whole(ByteSource file, TiffPicture p, List<String> notices) {
    // 4 is "undefined", which libraries write for plain unsigned numbers.
    if (p.format() != TiffPicture.UNSIGNED && p.format() != 4) {
      throw file.fail(
          "holds signed or complex samples (tag 339, SampleFormat "
              + p.format()
              + "), which are not read; save it with unsigned ones");
    }
    if (p.bits() < 1 || p.bits() > MAX_BITS) {
      throw file.fail("holds samples of " + p.bits() + " bits (tag 258), which are not read");
    }
    if (p.bits() > 16) {
      notices.add("Its " + p.bits() + "-bit samples are rounded to 16 bits.");
      return new TiffKind(p.channels(), Samples.Kind.SHORTS, 65535, new long[0]);
    }
    return new TiffKind(
        p.channels(),
        p.bits() <= 8 ? Samples.Kind.BYTES : Samples.Kind.SHORTS,
        (1 << p.bits()) - 1,
        new long[0]);
  }

  private static TiffKind palette(
      ByteSource file, TiffDirectory d, TiffPicture p, List<String> notices) {
    if (p.bits() > 16 || p.alpha() != Alpha.NONE) {
      throw file.fail("holds a palette in a form that is not read; save it as RGB");
    }
    long[] palette = d.numbers(TiffTag.COLOR_MAP, 3 << 16);
    if (palette.length != 3 << p.bits()) {
      throw file.fail("is damaged: its palette (tag 320) has " + palette.length + " entries");
    }
    long greatest = 0;
    for (long v : palette) {
      greatest = Math.max(greatest, v);
    }
    if (greatest < 256) {
      notices.add("Its palette holds 8-bit colours, which are read as such.");
      for (int i = 0; i < palette.length; i++) {
        palette[i] *= 257;
      }
    }
    return new TiffKind(3, Samples.Kind.SHORTS, 65535, palette);
  }

  private static void checkCompression(ByteSource file, TiffPicture p) {
    boolean own =
        p.compression() == TiffPicture.NONE
            || p.compression() == TiffPicture.LZW
            || p.compression() == TiffPicture.DEFLATE
            || p.compression() == TiffPicture.OLD_DEFLATE;
    if (!own && !OTHERS.contains(p.compression())) {
      throw file.fail(
          "is compressed in a way that is not read (tag 259, Compression "
              + p.compression()
              + "); save it with none, LZW or deflate");
    }
    if (p.photometric() == TiffPicture.YCBCR && (p.compression() != JPEG || p.bits() != 8)) {
      throw file.fail(
          "holds YCbCr colours outside a JPEG (tag 262), which are not read; save it as RGB");
    }
    if (own && (p.predictor() < 1 || p.predictor() > 3)) {
      throw file.fail(
          "is compressed in a way that is not read (tag 317, Predictor " + p.predictor() + ")");
    }
  }

  private static void checkWhite(ByteSource file, TiffPicture p) {
    boolean turns = p.photometric() == TiffPicture.MIN_IS_WHITE;
    if (turns && (p.format() == TiffPicture.FLOATS || p.alpha() == Alpha.ASSOCIATED)) {
      throw file.fail(
          "holds white as zero (tag 262) in a form that is not read; save it with black as zero");
    }
  }

  /** Bytes of a sample in the raster of the general reader. */
  int rasterBytes() {
    return samples == Samples.Kind.BYTES ? 1 : samples == Samples.Kind.SHORTS ? 4 : 8;
  }
}
