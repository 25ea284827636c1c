package org.duskply.engine.frame;

/** Unpacks one run of stored bytes after another, each from its start on. For one thread. */
interface Unpacker extends AutoCloseable {
  /** Turns to the {@code length} stored bytes that begin at {@code offset}. */
  void start(long offset, long length);

  /**
   * Fills {@code into} from {@code from} up to {@code to}.
   *
   * @return how many bytes came; fewer than asked for where the run ends or is damaged
   */
  int read(byte[] into, int from, int to);

  /**
   * Passes over {@code count} unpacked bytes.
   *
   * @param passed where they may be put on the way
   */
  default void skip(long count, byte[] passed) {
    for (long left = count; left > 0; ) {
      int got = read(passed, 0, (int) Math.min(passed.length, left));
      if (got == 0) {
        return;
      }
      left -= got;
    }
  }

  @Override
  default void close() {}

  /** Most bytes that an unpacker for this compression holds, its input buffer included. */
  static long workingBytes(int compression) {
    return (long) FrameLimits.READ_BYTES
        + switch (compression) {
          case TiffPicture.NONE, TiffPicture.PACK_BITS -> 0;
          case TiffPicture.LZW -> LzwUnpacker.TABLE_BYTES;
          default -> InflateUnpacker.BYTES;
        };
  }

  /** An unpacker for this compression. */
  static Unpacker of(int compression, ByteSource file) {
    return switch (compression) {
      case TiffPicture.NONE -> new RawUnpacker(file);
      case TiffPicture.LZW -> new LzwUnpacker(file);
      case TiffPicture.PACK_BITS -> new PackBitsUnpacker(file);
      default -> new InflateUnpacker(file);
    };
  }
}
