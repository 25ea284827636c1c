package org.duskply.engine.deliver;

import java.util.zip.Adler32;

/** A zlib stream (RFC 1950) a strip: two bytes, what a packer of blocks makes, and a checksum. */
final class ZlibStrips implements StripPacker {
  /**
   * Deflate with a window of 32 KiB, little effort, as one number a multiple of 31. How much effort
   * it was is a hint to those who pack again.
   */
  private static final int[] HEADER = {0x78, 0x5E};

  private final BlockPacker blocks;
  private final Adler32 sum = new Adler32();

  ZlibStrips(BlockPacker blocks) {
    this.blocks = blocks;
  }

  /** What a zlib stream begins with. */
  static void begin(Growing out) {
    for (int b : HEADER) {
      out.add(b);
    }
  }

  @Override
  public void pack(byte[] raw, int count, Growing out) {
    begin(out);
    blocks.pack(raw, count, true, out);
    sum.reset();
    sum.update(raw, 0, count);
    for (int shift = 24; shift >= 0; shift -= 8) {
      out.add((int) sum.getValue() >>> shift);
    }
  }

  @Override
  public void close() {
    blocks.close();
  }
}
