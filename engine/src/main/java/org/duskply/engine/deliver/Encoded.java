package org.duskply.engine.deliver;

import org.duskply.engine.render.EncodedBand;

/**
 * One band, encoded: the bytes that {@link Sink#append} puts into the file and what the file must
 * know of them. May be kept and appended again to another file whose {@link SinkSpec} is
 * {@linkplain SinkSpec#describe described} in the same way. Not changed by anyone once made.
 */
public final class Encoded implements EncodedBand {
  private final byte[] bytes;
  private final int[] marks;
  private final long clipped;

  Encoded(byte[] bytes, int[] marks, long clipped) {
    this.bytes = bytes;
    this.marks = marks;
    this.clipped = clipped;
  }

  /** The live bytes. */
  public byte[] bytes() {
    return bytes;
  }

  /** The format's own numbers: of a TIFF the length of each strip, of a PNG the checksum. */
  int[] marks() {
    return marks;
  }

  /**
   * Pixels that the file's colours cannot hold, as {@link OutputColour} counts them, and that were
   * clipped.
   */
  public long clipped() {
    return clipped;
  }

  @Override
  public long heldBytes() {
    return bytes.length + (long) Integer.BYTES * marks.length;
  }
}
