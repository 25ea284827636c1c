package org.duskply.engine.testing;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/**
 * Writes PNG files byte by byte from the text of the standard (PNG, third edition), for tests: any
 * kind of colour and depth, any chunks. It shares no code with the engine.
 */
public final class PngFile {
  private final int width;
  private final int height;
  private final int kind;
  private final int bits;
  private final TiffFile.Picture picture;
  private final ByteArrayOutputStream before = new ByteArrayOutputStream();
  private final ByteArrayOutputStream after = new ByteArrayOutputStream();

  /**
   * @param kind 0 grey, 2 RGB, 3 palette, 4 grey and alpha, 6 RGB and alpha
   * @param picture samples, or indices into the palette
   */
  public PngFile(int width, int height, int kind, int bits, TiffFile.Picture picture) {
    this.width = width;
    this.height = height;
    this.kind = kind;
    this.bits = bits;
    this.picture = picture;
  }

  /** Adds a chunk before the pixels. */
  public PngFile chunk(String type, byte[] data) {
    write(before, type, data);
    return this;
  }

  /** Adds a chunk behind the pixels. */
  public PngFile later(String type, byte[] data) {
    write(after, type, data);
    return this;
  }

  /** Big-endian numbers of four bytes each. */
  public static byte[] ints(int... values) {
    ByteBuffer out = ByteBuffer.allocate(4 * values.length);
    for (int v : values) {
      out.putInt(v);
    }
    return out.array();
  }

  /** A profile as the chunk iCCP holds it. */
  public static byte[] profile(byte[] profile) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes("own".getBytes(StandardCharsets.ISO_8859_1));
    out.writeBytes(new byte[2]);
    out.writeBytes(TiffFile.deflate(profile));
    return out.toByteArray();
  }

  /** The file. */
  public byte[] bytes() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
    ByteBuffer header = ByteBuffer.allocate(13).putInt(width).putInt(height);
    write(out, "IHDR", header.put((byte) bits).put((byte) kind).array());
    out.writeBytes(before.toByteArray());
    write(out, "IDAT", TiffFile.deflate(rows()));
    out.writeBytes(after.toByteArray());
    write(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  /** Rows without a filter, each after its zero byte, samples packed from the highest bit. */
  private byte[] rows() {
    int samples = new int[] {1, 0, 3, 1, 2, 0, 4}[kind];
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int y = 0; y < height; y++) {
      out.write(0);
      int held = 0;
      int count = 0;
      for (int i = 0; i < width * samples; i++) {
        held = held << bits | picture.sample(i / samples, y, i % samples);
        for (count += bits; count >= 8; count -= 8) {
          out.write(held >> (count - 8));
        }
        held &= (1 << count) - 1;
      }
      if (count > 0) {
        out.write(held << (8 - count));
      }
    }
    return out.toByteArray();
  }

  private static void write(ByteArrayOutputStream out, String type, byte[] data) {
    byte[] name = type.getBytes(StandardCharsets.ISO_8859_1);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(data);
    out.writeBytes(ints(data.length));
    out.writeBytes(name);
    out.writeBytes(data);
    out.writeBytes(ints((int) crc.getValue()));
  }
}
