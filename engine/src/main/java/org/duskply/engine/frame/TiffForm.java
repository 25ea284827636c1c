package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.jspecify.annotations.Nullable;

/**
 * How a TIFF file writes numbers (TIFF 6.0, section 2).
 *
 * @param order byte order
 * @param big whether offsets and counts take 8 bytes (BigTIFF) instead of 4
 * @param first where the first directory lies
 */
record TiffForm(ByteOrder order, boolean big, long first) {
  /** The form that these first bytes of a file announce, or null if they are not of a TIFF. */
  static @Nullable TiffForm of(byte[] head) {
    if (head.length < 8 || head[0] != head[1] || (head[0] != 'I' && head[0] != 'M')) {
      return null;
    }
    ByteOrder order = head[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
    ByteBuffer in = ByteBuffer.wrap(head).order(order);
    int version = in.getShort(2);
    if (version == 42) {
      return new TiffForm(order, false, in.getInt(4) & 0xffffffffL);
    }
    boolean big = version == 43 && head.length >= 16 && in.getShort(4) == 8;
    return big ? new TiffForm(order, true, in.getLong(8)) : null;
  }

  /** Bytes of an offset or a count. */
  int wordBytes() {
    return big ? 8 : 4;
  }

  /** Bytes of the number of entries at the head of a directory. */
  int countBytes() {
    return big ? 8 : 2;
  }

  /** Bytes of an entry. */
  int entryBytes() {
    return 4 + 2 * wordBytes();
  }

  /** The offset or count that stands at {@code at}. */
  long word(ByteBuffer in, int at) {
    return big ? in.getLong(at) : in.getInt(at) & 0xffffffffL;
  }
}
