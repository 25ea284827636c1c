package org.duskply.engine.deliver;

/** What deflating takes of memory. */
final class Deflate {
  /** Native memory of one deflater: 2·64 KiB of window, 2·64 KiB of tables, and its state. */
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
