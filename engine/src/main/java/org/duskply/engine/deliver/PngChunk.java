package org.duskply.engine.deliver;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/** The chunks of a PNG (third edition, section 5.3): length, four letters, data, CRC. */
final class PngChunk {
  /** Bytes about the data. */
  static final int OVERHEAD = 12;

  private PngChunk() {}

  /** A chunk as it stands in the file. */
  static byte[] of(String type, byte[] data) {
    ByteBuffer out = ByteBuffer.allocate(data.length + OVERHEAD);
    put(out, type, data, 0, data.length);
    return out.array();
  }

  /** Puts a chunk whose data is a part of an array. */
  static void put(ByteBuffer out, String type, byte[] data, int from, int count) {
    byte[] letters = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(letters);
    crc.update(data, from, count);
    out.putInt(count).put(letters).put(data, from, count).putInt((int) crc.getValue());
  }
}
