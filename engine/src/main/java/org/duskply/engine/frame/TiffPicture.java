package org.duskply.engine.frame;

import org.duskply.engine.frame.FrameInfo.Alpha;
import org.jspecify.annotations.Nullable;

/**
 * How the first picture of a TIFF file stores its samples (TIFF 6.0), checked as far as one tag at
 * a time allows. {@link TiffBlocks} knows where they lie.
 *
 * @param colours 1 for grey and palettes, 3 for RGB and Lab, 4 for CMYK
 * @param stored samples a pixel as stored, colours first, then extra samples
 * @param bits of a sample
 * @param format 1 unsigned whole numbers, 2 signed, 3 floats
 * @param alpha what the used extra sample is
 * @param alphaAt which stored sample is alpha, −1 for none
 */
record TiffPicture(
    int width,
    int height,
    int colours,
    int stored,
    int bits,
    int format,
    int photometric,
    boolean planar,
    int compression,
    int predictor,
    int fillOrder,
    Alpha alpha,
    int alphaAt) {
  static final int MIN_IS_WHITE = 0;
  static final int MIN_IS_BLACK = 1;
  static final int RGB = 2;
  static final int PALETTE = 3;
  static final int SEPARATED = 5;
  static final int YCBCR = 6;
  static final int CIE_LAB = 8;
  static final int ICC_LAB = 9;

  static final int UNSIGNED = 1;
  static final int FLOATS = 3;

  static final int NONE = 1;
  static final int LZW = 5;
  static final int JPEG = 7;
  static final int DEFLATE = 8;
  static final int OLD_DEFLATE = 32946;
  static final int PACK_BITS = 32773;

  /** CMYK, among sets of inks (tag 332). */
  private static final int CMYK = 1;

  /** Reads what the directory says; a missing tag has its default. */
  static TiffPicture read(ByteSource file, TiffDirectory d) {
    long width = d.number(TiffTag.IMAGE_WIDTH, 0);
    long height = d.number(TiffTag.IMAGE_LENGTH, 0);
    FrameLimits.check(file, width, height);
    int photometric = (int) photometric(file, d);
    int colours = colours(photometric);
    int stored = stored(file, d, colours);
    long[] extra = d.numbers(TiffTag.EXTRA_SAMPLES, FrameLimits.MAX_STORED_CHANNELS);
    int alphaAt = alphaAt(extra, colours, stored);
    return new TiffPicture(
        (int) width,
        (int) height,
        colours,
        stored,
        same(file, d, TiffTag.BITS_PER_SAMPLE, stored, 1),
        same(file, d, TiffTag.SAMPLE_FORMAT, stored, UNSIGNED),
        photometric,
        d.number(TiffTag.PLANAR_CONFIGURATION, 1) == 2 && stored > 1,
        (int) d.number(TiffTag.COMPRESSION, NONE),
        (int) d.number(TiffTag.PREDICTOR, 1),
        (int) d.number(TiffTag.FILL_ORDER, 1),
        alphaAt < 0
            ? Alpha.NONE
            : extra[alphaAt - colours] == 1 ? Alpha.ASSOCIATED : Alpha.STRAIGHT,
        alphaAt);
  }

  private static int colours(int photometric) {
    return switch (photometric) {
      case RGB, YCBCR, CIE_LAB, ICC_LAB -> 3;
      case SEPARATED -> 4;
      default -> 1;
    };
  }

  private static long photometric(ByteSource file, TiffDirectory d) {
    long bits = d.number(TiffTag.SAMPLES_PER_PIXEL, 1);
    long photometric = d.number(TiffTag.PHOTOMETRIC, bits >= 3 ? RGB : MIN_IS_BLACK);
    if (photometric == 32803 || photometric == 34892 || d.has(TiffTag.DNG_VERSION)) {
      throw file.fail("is a camera's raw file; develop it to a 16-bit TIFF first");
    }
    boolean inks = photometric == SEPARATED && d.number(TiffTag.INK_SET, CMYK) == CMYK;
    boolean read =
        (photometric >= 0 && photometric <= PALETTE)
            || photometric == YCBCR
            || photometric == CIE_LAB
            || photometric == ICC_LAB
            || inks;
    if (!read) {
      throw file.fail(
          "holds "
              + colourModel(photometric)
              + " (tag 262, PhotometricInterpretation), which this version does not read;"
              + " save it as RGB");
    }
    return photometric;
  }

  private static String colourModel(long photometric) {
    return switch ((int) photometric) {
      case 4 -> "a transparency mask";
      case SEPARATED -> "inks other than CMYK";
      case 10 -> "Lab colours of a fax";
      case 32844, 32845 -> "LogLuv colours";
      default -> "colours of kind " + photometric;
    };
  }

  private static int stored(ByteSource file, TiffDirectory d, int colours) {
    long stored = d.number(TiffTag.SAMPLES_PER_PIXEL, colours);
    if (stored < colours || stored > FrameLimits.MAX_STORED_CHANNELS) {
      throw file.fail(
          "says it has " + stored + " samples a pixel (tag 277) where " + colours + " are due");
    }
    return (int) stored;
  }

  /** The one value that the first {@code stored} samples share; 0 where they differ. */
  private static int same(ByteSource file, TiffDirectory d, int tag, int stored, int otherwise) {
    long[] values = d.numbers(tag, FrameLimits.MAX_TAGS);
    if (values.length == 0) {
      return otherwise;
    }
    for (int i = 1; i < Math.min(stored, values.length); i++) {
      if (values[i] != values[0]) {
        throw file.fail("stores its samples in different ways (tag " + tag + "); save it anew");
      }
    }
    return (int) Math.max(0, Math.min(values[0], Short.MAX_VALUE));
  }

  /** Extra samples of unspecified meaning are not alpha. */
  private static int alphaAt(long[] extra, int colours, int stored) {
    for (int i = 0; i < Math.min(extra.length, stored - colours); i++) {
      if (extra[i] == 1 || extra[i] == 2) {
        return colours + i;
      }
    }
    return -1;
  }

  /** Samples a pixel that are kept. */
  int channels() {
    return colours + (alphaAt < 0 ? 0 : 1);
  }

  /** Whether some stored samples are left out. */
  boolean drops() {
    return stored > channels();
  }

  /**
   * Bytes of a stored row of {@code columns} pixels, of one plane where planes are stored apart.
   */
  long rowBytes(long columns) {
    return (columns * (planar ? 1 : stored) * bits + 7) / 8;
  }

  /** Which stored samples are kept, in rising order. */
  int[] kept() {
    int[] kept = new int[channels()];
    for (int c = 0; c < kept.length; c++) {
      kept[c] = c < colours ? c : alphaAt;
    }
    return kept;
  }

  /** Whether colours are those of CIE L*a*b*. */
  boolean lab() {
    return photometric == CIE_LAB || photometric == ICC_LAB;
  }

  /** Whether the compression is one of those that {@link TiffSource} takes. */
  boolean ownCompression() {
    return compression == NONE
        || compression == LZW
        || compression == DEFLATE
        || compression == OLD_DEFLATE
        || compression == PACK_BITS;
  }

  /** Why {@link TiffSource} cannot take this picture, or null if it can. */
  @Nullable String whyNotPlain() {
    if (!ownCompression()) {
      return "compression " + compression;
    }
    return photometric == YCBCR ? "YCbCr colours" : null;
  }

  /** How rows are predicted: 1 not at all, 2 differences, 3 differences of sorted bytes. */
  int predicted() {
    return compression == LZW || compression == DEFLATE || compression == OLD_DEFLATE
        ? predictor
        : 1;
  }
}
