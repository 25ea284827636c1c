package org.duskply.engine.frame;

/** The tags that are looked at, by their numbers in TIFF 6.0, EXIF 2.3 and ICC.1. */
final class TiffTag {
  static final int NEW_SUBFILE_TYPE = 254;
  static final int IMAGE_WIDTH = 256;
  static final int IMAGE_LENGTH = 257;
  static final int BITS_PER_SAMPLE = 258;
  static final int COMPRESSION = 259;
  static final int PHOTOMETRIC = 262;
  static final int FILL_ORDER = 266;
  static final int MAKE = 271;
  static final int MODEL = 272;
  static final int STRIP_OFFSETS = 273;
  static final int ORIENTATION = 274;
  static final int SAMPLES_PER_PIXEL = 277;
  static final int ROWS_PER_STRIP = 278;
  static final int STRIP_BYTE_COUNTS = 279;
  static final int PLANAR_CONFIGURATION = 284;
  static final int DATE_TIME = 306;
  static final int PREDICTOR = 317;
  static final int COLOR_MAP = 320;
  static final int TILE_WIDTH = 322;
  static final int TILE_LENGTH = 323;
  static final int TILE_OFFSETS = 324;
  static final int TILE_BYTE_COUNTS = 325;
  static final int SUB_IFDS = 330;
  static final int INK_SET = 332;
  static final int EXTRA_SAMPLES = 338;
  static final int SAMPLE_FORMAT = 339;
  static final int EXPOSURE_TIME = 33434;
  static final int F_NUMBER = 33437;
  static final int EXIF_IFD = 34665;
  static final int ICC_PROFILE = 34675;
  static final int ISO = 34855;
  static final int STANDARD_OUTPUT_SENSITIVITY = 34865;
  static final int RECOMMENDED_EXPOSURE_INDEX = 34866;
  static final int DATE_TIME_ORIGINAL = 36867;
  static final int DATE_TIME_DIGITIZED = 36868;
  static final int SHUTTER_SPEED_VALUE = 37377;
  static final int APERTURE_VALUE = 37378;
  static final int DNG_VERSION = 50706;

  private TiffTag() {}
}
