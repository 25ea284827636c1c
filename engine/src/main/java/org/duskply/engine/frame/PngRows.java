package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Counts the rows that the data of a PNG's pixels holds (PNG, third edition, section 10), in little
 * memory: the header may promise far more than there is.
 */
final class PngRows {
  /** First column and row of each pass, and the steps from there. */
  private static final int[][] PASSES = {
    {0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4}, {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}
  };

  private final ByteSource file;
  private final Inflater inflater = new Inflater();
  private final byte[] packed = new byte[FrameLimits.READ_BYTES];
  private final byte[] passed = new byte[FrameLimits.READ_BYTES];
  private final long wanted;
  private long got;

  private PngRows(ByteSource file, long wanted) {
    this.file = file;
    this.wanted = wanted;
  }

  /** How many rows are whole, from the top; of an interlaced picture either all or none. */
  static long whole(ByteSource file, PngChunks chunks) {
    long rowBytes = rowBytes(chunks, chunks.width());
    PngRows rows =
        new PngRows(file, chunks.interlaced() ? passes(chunks) : rowBytes * chunks.height());
    try {
      rows.count();
    } catch (DataFormatException e) {
      // What came before it counts.
    } finally {
      rows.inflater.end();
    }
    if (chunks.interlaced()) {
      return rows.got < rows.wanted ? 0 : chunks.height();
    }
    return Math.min(rows.got / rowBytes, chunks.height());
  }

  /** Bytes of a row of so many pixels, one for its filter among them. */
  private static long rowBytes(PngChunks chunks, long pixels) {
    return 1 + (pixels * chunks.stored() * chunks.bits() + 7) / 8;
  }

  /** Bytes of the seven passes of Adam7 (section 8); a pass without pixels has none. */
  private static long passes(PngChunks chunks) {
    long bytes = 0;
    for (int[] pass : PASSES) {
      long across = (chunks.width() - pass[0] + pass[2] - 1) / pass[2];
      long down = (chunks.height() - pass[1] + pass[3] - 1) / pass[3];
      bytes += across > 0 && down > 0 ? down * rowBytes(chunks, across) : 0;
    }
    return bytes;
  }

  private void count() throws DataFormatException {
    byte[] head = new byte[8];
    long at = PngChunks.SIGNATURE.length;
    for (int n = 0; n < PngChunks.MAX_CHUNKS && at + 8 <= file.size() && got < wanted; n++) {
      file.read(at, head, 0, 8);
      long length = ByteBuffer.wrap(head).getInt(0) & 0xffffffffL;
      if (new String(head, 4, 4, StandardCharsets.ISO_8859_1).equals("IDAT")) {
        inflate(at + 8, Math.min(at + 8 + length, file.size()));
      }
      at += 12 + length;
    }
  }

  private void inflate(long from, long to) throws DataFormatException {
    for (long at = from; at < to && got < wanted && !inflater.finished(); ) {
      int some = (int) Math.min(packed.length, to - at);
      file.read(at, packed, 0, some);
      at += some;
      inflater.setInput(packed, 0, some);
      int made;
      do {
        made = inflater.inflate(passed);
        got += made;
      } while (made > 0 && got < wanted);
    }
  }
}
