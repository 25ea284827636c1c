package org.duskply.engine.render;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** Where finished bands of one picture go. */
public interface BandSink {
  /**
   * Encodes the rows of a band; pure and thread-safe.
   *
   * @return what appends the encoded rows; run for every band once, from the top down, one at a
   *     time
   */
  Runnable encode(int band, Planes rows);

  /** Most bytes that one {@link #encode} takes while it runs, its answer included. */
  long encodeBytes(Region band);

  /** Bytes held by the sink itself as long as it is open. */
  long heldBytes();
}
