package org.duskply.engine.deliver;

import java.util.zip.Deflater;

/** Deflates by zlib. For one thread. */
final class ZlibPacker implements BlockPacker {
  private final Deflater deflater;

  /**
   * A packer.
   *
   * @param level 1 to 9
   * @param strategy as {@link Deflater} names it
   */
  ZlibPacker(int level, int strategy) {
    deflater = new Deflater(level, true);
    deflater.setStrategy(strategy);
  }

  @Override
  public void pack(byte[] raw, int count, boolean last, Growing out) {
    deflater.setInput(raw, 0, count);
    if (last) {
      out.finish(deflater);
      deflater.reset();
    } else {
      out.flush(deflater);
    }
  }

  @Override
  public void close() {
    deflater.end();
  }
}
