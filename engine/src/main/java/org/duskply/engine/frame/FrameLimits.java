package org.duskply.engine.frame;

/**
 * How large a frame may be, and how its rows are cut into units. Files come from strangers: every
 * number read out of one is held against a limit here before anything is allocated for it.
 */
public final class FrameLimits {
  /** Most columns or rows. */
  public static final int MAX_SIDE = 300_000;

  /** Most pixels. */
  public static final long MAX_PIXELS = 1_000_000_000;

  /** Most samples that one array can hold: what a frame that is decoded whole may have. */
  public static final int MAX_WHOLE_SAMPLES = Integer.MAX_VALUE - 8;

  /** Most samples a pixel that a file may store, of which at most four are used. */
  public static final int MAX_STORED_CHANNELS = 64;

  /** Most stored bytes of one row of a strip or a tile. */
  public static final int MAX_ROW_BYTES = 64 << 20;

  /** Most strips or tiles. */
  public static final int MAX_BLOCKS = 1_000_000;

  /** Most entries of one directory of tags. */
  public static final int MAX_TAGS = 4096;

  /** Largest ICC profile in bytes. */
  public static final int MAX_PROFILE_BYTES = 16 << 20;

  /** Largest camera record (EXIF) in bytes. */
  public static final int MAX_EXIF_BYTES = 16 << 20;

  /** Longest line of text that is taken from a camera record. */
  public static final int MAX_TEXT = 256;

  /** Rows of a unit where the file leaves the choice. */
  static final int UNIT_ROWS = 64;

  /** Rows that low strips are gathered to, to be decoded as one unit. */
  static final int GROUPED_ROWS = 16;

  /** Most rows of a strip or tile that is decoded as one unit. */
  static final int MAX_UNIT_ROWS = 256;

  /** Most bytes of samples of a unit, unless a single row is larger. */
  static final int MAX_UNIT_BYTES = 16 << 20;

  /** Bytes that are read from a file at once. */
  static final int READ_BYTES = 64 << 10;

  private FrameLimits() {}

  /** Rows of a unit whose rows take {@code rowBytes} bytes of samples. */
  static int unitRows(long rowBytes) {
    return (int) Math.max(1, Math.min(UNIT_ROWS, MAX_UNIT_BYTES / rowBytes));
  }

  /**
   * Refuses a picture that has no pixel or too many.
   *
   * @throws FrameException naming the file and the limit
   */
  static void check(ByteSource file, long width, long height) {
    if (width < 1 || height < 1) {
      throw file.fail("says it is " + width + " × " + height + " pixels, which is no picture");
    }
    if (width > MAX_SIDE || height > MAX_SIDE) {
      throw file.fail(
          "is " + width + " × " + height + " pixels; the longest side taken is " + MAX_SIDE);
    }
    if (width * height > MAX_PIXELS) {
      throw file.fail(
          "is " + width + " × " + height + " pixels; the most taken is " + MAX_PIXELS + " pixels");
    }
  }

  /** Refuses a picture that must be decoded whole and whose samples no single array can hold. */
  static void checkWhole(ByteSource file, long width, long height, int channels) {
    if (width * height * channels > MAX_WHOLE_SAMPLES) {
      throw file.fail(
          "is "
              + width
              + " × "
              + height
              + " pixels, too large for a kind of file that can only be decoded whole;"
              + " save it as a plain TIFF in strips");
    }
  }
}
