package org.duskply.engine.render;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;

/** Where finished bands of one picture go. */
public interface BandSink {
  /** Encodes the rows of a band; pure and thread-safe. */
  EncodedBand encode(int band, Planes rows);

  /**
   * Appends an encoded band; done for every band once, from the top down, one at a time.
   *
   * @param encoded by this sink or by another of the same {@linkplain #describe description}
   */
  void append(int band, EncodedBand encoded);

  /**
   * Writes all that decides an encoded band beside the band's own pixels: sinks of equal
   * descriptions encode equal pixels to equal bytes.
   */
  void describe(KeyWriter key);

  /** Most bytes that one {@link #encode} takes while it runs, its answer included. */
  long encodeBytes(Region band);

  /** Bytes held by the sink itself as long as it is open. */
  long heldBytes();
}
