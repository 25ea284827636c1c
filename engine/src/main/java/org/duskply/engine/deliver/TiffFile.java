package org.duskply.engine.deliver;

import java.util.Arrays;
import java.util.function.BooleanSupplier;
import org.duskply.recipe.deliver.Compress;

/**
 * A TIFF of 8 or 16-bit RGB: little-endian, chunky, in strips, the directory in front (TIFF 6.0
 * sections 2 to 8 and 14). Strips are deflated (compression 8) or packed by LZW (compression 5),
 * each on its own, after horizontal differencing (predictor 2), or stored.
 *
 * <p>Every band holds whole strips: rows of a strip are the largest divisor of a band's rows that
 * keeps a strip's samples within {@value #STRIP_BYTES} bytes, at least one row.
 *
 * <p>Offsets have 32 bits, so a file ends below 4 GiB; a larger one is refused.
 */
final class TiffFile implements Container {
  /** Most bytes of a strip's samples, where a row is not longer. */
  static final int STRIP_BYTES = 1 << 18;

  /** The greatest offset. */
  static final long MAX_FILE = 0xFFFF_FFFFL;

  private static final int IMAGE_WIDTH = 256;
  private static final int IMAGE_LENGTH = 257;
  private static final int BITS_PER_SAMPLE = 258;
  private static final int COMPRESSION = 259;
  private static final int PHOTOMETRIC = 262;
  private static final int STRIP_OFFSETS = 273;
  private static final int SAMPLES_PER_PIXEL = 277;
  private static final int ROWS_PER_STRIP = 278;
  private static final int STRIP_BYTE_COUNTS = 279;
  private static final int PLANAR_CONFIGURATION = 284;
  private static final int PREDICTOR = 317;
  private static final int SAMPLE_FORMAT = 339;
  private static final int XMP = 700;
  private static final int IIM = 33723;
  private static final int ICC_PROFILE = 34675;

  private final SinkSpec spec;
  private final BandLayout layout;
  private final byte[] profile;
  private final int stripRows;
  private final long[] offsets;
  private final long[] counts;
  private final byte[] xmp;
  private final byte[] iim;
  private int strip;

  TiffFile(SinkSpec spec, BandLayout layout, byte[] profile) {
    this.spec = spec;
    this.layout = layout;
    this.profile = profile.clone();
    this.stripRows = stripRows(layout);
    boolean captioned = !spec.captions().texts().isEmpty();
    this.xmp = captioned ? XmpPacket.of(spec.captions()) : new byte[0];
    this.iim = captioned ? IimRecord.of(spec.captions()) : new byte[0];
    int strips = Math.toIntExact(((long) layout.height() + stripRows - 1) / stripRows);
    this.offsets = new long[strips];
    this.counts = new long[strips];
    if (spec.compress() == Compress.NONE) {
      refuseBeyond(directory().size() + layout.pictureBytes());
    }
  }

  /** Rows of every strip but the last. */
  static int stripRows(BandLayout layout) {
    int rows = layout.bandRows();
    int most = (int) Math.max(1, Math.min(rows, STRIP_BYTES / layout.rowBytes()));
    while (rows % most != 0) {
      most--;
    }
    return most;
  }

  @Override
  public Encoded encode(int band, CodeRows rows) {
    int strips = (rows.count() + stripRows - 1) / stripRows;
    int[] lengths = new int[strips];
    byte[] raw = new byte[Math.toIntExact(layout.rowBytes() * Math.min(stripRows, rows.count()))];
    short[] codes = new short[layout.rowSamples()];
    Growing out = new Growing(StripPacker.room(spec.compress(), layout.rowBytes() * rows.count()));
    try (StripPacker packer = StripPacker.of(spec.compress(), spec.deflateLevel())) {
      for (int s = 0; s < strips; s++) {
        int before = out.count();
        int count = Math.min(stripRows, rows.count() - s * stripRows);
        packer.pack(raw, fill(raw, codes, rows, count), out);
        lengths[s] = out.count() - before;
      }
    }
    return new Encoded(out.toBytes(), lengths, rows.clipped());
  }

  /** The next rows as the file holds them; answers how many bytes. */
  private int fill(byte[] raw, short[] codes, CodeRows rows, int count) {
    int at = 0;
    for (int y = 0; y < count; y++) {
      rows.next(codes);
      if (spec.compress() != Compress.NONE) {
        SamplePacking.difference(codes, codes.length, BandLayout.CHANNELS);
      }
      if (layout.depth() == 8) {
        SamplePacking.bytes(codes, codes.length, raw, at);
      } else {
        SamplePacking.littleEndian(codes, codes.length, raw, at);
      }
      at += (int) layout.rowBytes();
    }
    return at;
  }

  @Override
  public void begin(SafeFile file) {
    file.append(directory().head()); // its size is right, its offsets are not known yet
  }

  @Override
  public void append(SafeFile file, int band, Encoded encoded) {
    long at = file.size();
    refuseBeyond(at + encoded.bytes().length);
    for (int length : encoded.marks()) {
      offsets[strip] = at;
      counts[strip] = length;
      at += length;
      strip++;
    }
    file.append(encoded.bytes());
  }

  @Override
  public void end(SafeFile file, BooleanSupplier stop) {
    file.write(0, directory().head());
  }

  @Override
  public long encodeBytes(int rows) {
    long raw = layout.rowBytes() * Math.min(stripRows, rows);
    long packed = StripPacker.room(spec.compress(), layout.rowBytes() * rows);
    return raw + 2 * packed + CodeRows.bytes(layout.width()) + StripPacker.BYTES;
  }

  @Override
  public long heldBytes() {
    return (long) Long.BYTES * (offsets.length + counts.length) + 4L * directory().size();
  }

  private TiffDirectory directory() {
    TiffDirectory d = new TiffDirectory();
    int[] perChannel = new int[BandLayout.CHANNELS];
    Arrays.fill(perChannel, layout.depth());
    d.longs(IMAGE_WIDTH, layout.width());
    d.longs(IMAGE_LENGTH, layout.height());
    d.shorts(BITS_PER_SAMPLE, perChannel);
    d.shorts(COMPRESSION, compression());
    d.shorts(PHOTOMETRIC, 2); // RGB
    d.longs(STRIP_OFFSETS, offsets);
    d.shorts(SAMPLES_PER_PIXEL, BandLayout.CHANNELS);
    d.longs(ROWS_PER_STRIP, Math.min(stripRows, layout.height()));
    d.longs(STRIP_BYTE_COUNTS, counts);
    d.shorts(PLANAR_CONFIGURATION, 1); // chunky
    if (spec.compress() != Compress.NONE) {
      d.shorts(PREDICTOR, 2); // horizontal differencing
    }
    Arrays.fill(perChannel, 1); // unsigned integers
    d.shorts(SAMPLE_FORMAT, perChannel);
    d.undefined(ICC_PROFILE, profile);
    ExifBlock.describe(d, spec);
    ExifBlock.date(d, spec);
    if (xmp.length > 0) {
      d.bytes(XMP, xmp); // ISO 16684-3
      d.undefined(IIM, iim); // bytes, though many writers call them longs; some readers ask for it
    }
    return d;
  }

  private int compression() {
    return switch (spec.compress()) {
      case NONE -> 1;
      case LZW -> 5;
      case DEFLATE -> 8; // by the supplement to TIFF 6.0 of 2002
    };
  }

  private void refuseBeyond(long size) {
    if (size > MAX_FILE) {
      throw new DeliverException(
          spec.target()
              + " would be larger than 4 GB, the most that a TIFF can hold; deliver it smaller, in"
              + " 8 bit or as PNG.");
    }
  }
}
