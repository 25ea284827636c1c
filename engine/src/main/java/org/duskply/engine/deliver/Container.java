package org.duskply.engine.deliver;

import java.util.function.BooleanSupplier;

/**
 * A file format, as {@link FileSink} drives it. {@link #encode} is pure and thread-safe; the others
 * are called by one thread at a time: begin, append in rising order of bands, end.
 */
interface Container {
  /** Packs the rows of a band. */
  Encoded encode(int band, CodeRows rows);

  /** Writes what stands before the first band. */
  void begin(SafeFile file);

  /** Writes a band. */
  void append(SafeFile file, int band, Encoded encoded);

  /** Writes what stands after the last band. */
  void end(SafeFile file, BooleanSupplier stop);

  /** Most bytes of one {@link #encode} of so many rows, its result included. */
  long encodeBytes(int rows);

  /** Bytes held from begin to end. */
  long heldBytes();
}
