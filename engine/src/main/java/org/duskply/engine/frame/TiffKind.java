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
  /** Compressions that the general reader takes, beside our own: fax and JPEG. */
  private static final Set<Integer> OTHERS = Set.of(2, 3, 4, 7);

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
    if (p.lab()) {
      return lab(file, p, notices);
    }
    if (p.format() == TiffPicture.FLOATS) {
      if (p.bits() != 16 && p.bits() != 24 && p.bits() != 32 && p.bits() != 64) {
        throw file.fail("holds floats of " + p.bits() + " bits (tag 258), which are not read");
      }
      checkPredictor(file, p, p.bits() == 16 || p.bits() == 32, true);
      return new TiffKind(p.channels(), Samples.Kind.FLOATS, 1, new long[0]);
    }
    checkPredictor(file, p, p.bits() == 8 || p.bits() == 16 || p.bits() == 32, false);
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

  /** Lab is turned into light as it is read, so that it can hold every colour. */
  private static TiffKind lab(ByteSource file, TiffPicture p, List<String> notices) {
    boolean deep = p.bits() == 8 || p.bits() == 16;
    boolean plain = p.ownCompression() && !p.planar() && p.predicted() < 3;
    if (!deep || !plain || p.format() == TiffPicture.FLOATS || p.alpha() == Alpha.ASSOCIATED) {
      throw file.fail("holds Lab colours in a form that is not read; save it as RGB");
    }
    notices.add("Its Lab colours are read under D50.");
    return new TiffKind(p.channels(), Samples.Kind.FLOATS, 1, new long[0]);
  }

  private static TiffKind palette(
      ByteSource file, TiffDirectory d, TiffPicture p, List<String> notices) {
    boolean alphaApart = p.planar() && p.alpha() != Alpha.NONE;
    checkPredictor(file, p, p.bits() == 8 || p.bits() == 16, false);
    boolean associated = p.alpha() == Alpha.ASSOCIATED;
    boolean deep = p.bits() < 1 || p.bits() > 16;
    if (deep || p.format() == TiffPicture.FLOATS || alphaApart || associated) {
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
    return new TiffKind(p.channels() + 2, Samples.Kind.SHORTS, 65535, palette);
  }

  private static void checkCompression(ByteSource file, TiffPicture p) {
    if (!p.ownCompression() && !OTHERS.contains(p.compression())) {
      throw file.fail(
          "is compressed in a way that is not read (tag 259, Compression "
              + p.compression()
              + "); save it with none, LZW or deflate");
    }
    if (p.photometric() == TiffPicture.YCBCR
        && (p.compression() != TiffPicture.JPEG || p.bits() != 8)) {
      throw file.fail(
          "holds YCbCr colours outside a JPEG (tag 262), which are not read; save it as RGB");
    }
  }

  private static void checkPredictor(
      ByteSource file, TiffPicture p, boolean differences, boolean sorted) {
    int predictor = p.predicted();
    boolean known = predictor == 1 || predictor == 2 && differences || predictor == 3 && sorted;
    if (!known && p.ownCompression()) {
      throw file.fail(
          "is compressed in a way that is not read (tag 317, Predictor " + predictor + ")");
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
