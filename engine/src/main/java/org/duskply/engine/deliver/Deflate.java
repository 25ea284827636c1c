package org.duskply.engine.deliver;

/** What the packing of TIFF strips and PNG bands has in common. */
final class Deflate {
  /**
   * Level of compression: the library's own default. On the demo's 16-bit frames level 9 saves less
   * than a hundredth and takes several times as long.
   */
  static final int LEVEL = 6;

  /** Native memory of one deflater: 2·64 KiB of window and 2·64 KiB of tables, and its state. */
  static final long NATIVE_BYTES = 300L << 10;

  private Deflate() {}

  /**
   * Room for {@code raw} bytes once deflated, if they do not shrink; {@link Growing} mends the
   * rest.
   */
  static int room(long raw) {
    return Math.toIntExact(raw + raw / 1000 + 256);
  }
}
