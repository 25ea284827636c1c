package org.duskply.engine.deliver;

import java.util.zip.Deflater;
import org.duskply.recipe.deliver.Compress;

/** Packs the strips of a TIFF, or other bytes, each on its own. For one thread. */
interface StripPacker extends AutoCloseable {
  /** Bytes that any packer holds, on the heap and off it. */
  long BYTES = Math.max(ChosenPacker.BYTES, LzwPacker.BYTES);

  /** Adds a strip, packed. */
  void pack(byte[] raw, int count, Growing out);

  @Override
  default void close() {}

  /**
   * A packer.
   *
   * @param deflateLevel of zlib, 1 to 9, for strips that are deflated; 0: what suits them
   */
  static StripPacker of(Compress compress, int deflateLevel) {
    return switch (compress) {
      case NONE -> (raw, count, out) -> out.add(raw, 0, count);
      case LZW -> new LzwPacker();
      case DEFLATE ->
          new ZlibStrips(
              deflateLevel == 0
                  ? new ChosenPacker()
                  : new ZlibPacker(deflateLevel, Deflater.DEFAULT_STRATEGY));
    };
  }

  /** Room for so many bytes of samples in strips, once packed, if they do not shrink. */
  static int room(Compress compress, long raw) {
    return compress == Compress.LZW ? LzwPacker.room(raw) : Deflate.room(raw);
  }
}
