package org.duskply.engine.deliver;

/**
 * Deflates bytes to whole blocks of a deflate stream (RFC 1951), piece by piece; what stands around
 * a stream is another's work. For one thread.
 */
interface BlockPacker extends AutoCloseable {
  /**
   * Adds a piece, packed, up to a whole byte.
   *
   * @param last whether the stream ends with it; what comes next begins another
   */
  void pack(byte[] raw, int count, boolean last, Growing out);

  @Override
  default void close() {}
}
