package org.duskply.engine.deliver;

import java.nio.ByteBuffer;
import java.util.function.BooleanSupplier;
import java.util.zip.Adler32;

/**
 * A PNG of 8 or 16-bit RGB whose bands are packed side by side, each in the way that suits it
 * ({@link ChosenPacker}). Each ends on a whole byte, the last one with the end of the stream; put
 * after one another, with a header before and the combined checksum behind, they are one zlib
 * stream (RFC 1950, 1951). A band refers to no byte before it.
 */
final class PngFile implements Container {
  /** Most bytes of one IDAT chunk's data. */
  static final int CHUNK_BYTES = 1 << 18;

  /** Most bytes of filtered rows that are packed at a time, where three are not more. */
  private static final int PIECE_BYTES = 1 << 18;

  private final SinkSpec spec;
  private final BandLayout layout;
  private final byte[] profile;
  private int adler = Adler.EMPTY;

  PngFile(SinkSpec spec, BandLayout layout, byte[] profile) {
    this.spec = spec;
    this.layout = layout;
    this.profile = profile.clone();
  }

  @Override
  public Encoded encode(int band, CodeRows rows) {
    Growing out = new Growing(Deflate.room(filteredBytes(rows.count())));
    if (band == 0) {
      ZlibStrips.begin(out);
    }
    Adler32 sum = new Adler32();
    FilteredRows filtered = new FilteredRows(layout, rows);
    int most = pieceRows(rows.count());
    byte[] piece = new byte[Math.toIntExact(filteredBytes(most))];
    try (BlockPacker packer = new ChosenPacker()) {
      for (int y = 0; y < rows.count(); y += most) {
        int count = Math.min(most, rows.count() - y);
        int bytes = filtered.next(count, piece);
        boolean last = band == layout.bands() - 1 && y + count == rows.count();
        sum.update(piece, 0, bytes);
        packer.pack(piece, bytes, last, out);
      }
    }
    return new Encoded(chunks(out.toBytes()), new int[] {(int) sum.getValue()}, rows.clipped());
  }

  /**
   * How many of so many rows are packed at a time: three at least, for the first is unlike others.
   */
  private int pieceRows(int rows) {
    return (int) Math.min(rows, Math.max(3, PIECE_BYTES / filteredBytes(1)));
  }

  private static byte[] chunks(byte[] stream) {
    int count = (stream.length + CHUNK_BYTES - 1) / CHUNK_BYTES;
    ByteBuffer out = ByteBuffer.allocate(stream.length + count * PngChunk.OVERHEAD);
    for (int from = 0; from < stream.length; from += CHUNK_BYTES) {
      PngChunk.put(out, "IDAT", stream, from, Math.min(CHUNK_BYTES, stream.length - from));
    }
    return out.array();
  }

  @Override
  public void begin(SafeFile file) {
    file.append(PngHead.of(spec, profile));
  }

  @Override
  public void append(SafeFile file, int band, Encoded encoded) {
    file.append(encoded.bytes());
    long bytes = filteredBytes(layout.area(band).height());
    adler = Adler.combine(adler, encoded.marks()[0], bytes);
  }

  @Override
  public void end(SafeFile file, BooleanSupplier stop) {
    file.append(PngChunk.of("IDAT", ByteBuffer.allocate(4).putInt(adler).array()));
    file.append(PngChunk.of("IEND", new byte[0]));
  }

  @Override
  public long encodeBytes(int rows) {
    long packed = Deflate.room(filteredBytes(rows));
    long scratch = CodeRows.bytes(layout.width()) + FilteredRows.bytes(layout);
    return 3 * packed + filteredBytes(pieceRows(rows)) + scratch + ChosenPacker.BYTES;
  }

  @Override
  public long heldBytes() {
    return PngHead.bytes(spec, profile);
  }

  private long filteredBytes(int rows) {
    return (layout.rowBytes() + 1) * rows;
  }
}
