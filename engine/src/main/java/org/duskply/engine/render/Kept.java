package org.duskply.engine.render;

import org.duskply.engine.pixel.Region;

/** Finished work that a {@link Store} may hold. Not changed by anyone once made. */
public sealed interface Kept permits KeptBand, KeptUnit, EncodedBand {
  /** What it is worth among others. */
  Worth worth();

  /** The pixels that it has. */
  Region area();

  /** Bytes that it takes. */
  long heldBytes();

  /**
   * Kinds of work in rising order of the time that a byte of it takes to be made again, for a
   * composite of deflated frames of 16 bits.
   */
  enum Worth {
    /** A band of a mask: drawn and softened, some 3 ns a byte. */
    MASK,
    /** A band of a picture: blended from samples, some 10 ns a byte where these are kept. */
    PICTURE,
    /** Samples of a frame: unpacked, some 20 ns a byte. */
    SAMPLES,
    /** A band of a frame at a preview's scale: many bytes unpacked for each, 200 ns and more. */
    REDUCED,
    /** A band as it stands in the file: all that, and packed; and with it nothing else is due. */
    ENCODED
  }
}
