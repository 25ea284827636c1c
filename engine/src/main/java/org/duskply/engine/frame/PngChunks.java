package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * The chunks of a PNG file (PNG, third edition, sections 5 and 11) that say what its samples mean.
 */
final class PngChunks {
  static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};

  private static final Set<String> KEPT =
      Set.of("IHDR", "PLTE", "tRNS", "iCCP", "sRGB", "gAMA", "cHRM", "cICP", "eXIf");

  static final int MAX_CHUNKS = 1_000_000;

  private final Map<String, byte[]> kept = new HashMap<>();
  private final int width;
  private final int height;
  private boolean cut;

  /**
   * Walks all chunks.
   *
   * @throws FrameException if there is no header, or no pixels' data at all
   */
  PngChunks(ByteSource file) {
    walk(file);
    byte[] header = kept.get("IHDR");
    if (header == null || header.length != 13) {
      throw file.fail("is a damaged PNG: it does not say how large it is");
    }
    ByteBuffer in = ByteBuffer.wrap(header);
    FrameLimits.check(file, in.getInt(0) & 0xffffffffL, in.getInt(4) & 0xffffffffL);
    this.width = in.getInt(0);
    this.height = in.getInt(4);
  }

  private void walk(ByteSource file) {
    byte[] head = new byte[8];
    boolean data = false;
    long at = SIGNATURE.length;
    for (int n = 0; n < MAX_CHUNKS && at + 8 <= file.size(); n++) {
      file.read(at, head, 0, 8);
      long length = ByteBuffer.wrap(head).getInt(0) & 0xffffffffL;
      String type = new String(head, 4, 4, StandardCharsets.ISO_8859_1);
      boolean inside = at + 8 + length <= file.size();
      data |= type.equals("IDAT");
      cut = !inside && type.equals("IDAT");
      if (!inside || type.equals("IEND")) {
        break;
      }
      if (KEPT.contains(type)
          && length <= FrameLimits.MAX_PROFILE_BYTES
          && !kept.containsKey(type)) {
        byte[] bytes = new byte[(int) length];
        file.read(at + 8, bytes, 0, bytes.length);
        if (critical(type) && !sound(file, at + 4, length + 4)) {
          throw file.fail("is a damaged PNG: its chunk " + type + " does not match its checksum");
        }
        kept.put(type, bytes);
      }
      at += 12 + length;
    }
    if (!data) {
      throw file.fail("is cut short: it holds no rows");
    }
  }

  /** Whether a picture cannot do without the chunk: its name begins with a capital (5.4). */
  private static boolean critical(String type) {
    return Character.isUpperCase(type.charAt(0));
  }

  /** Whether the name and data of a chunk match the checksum behind them (5.3). */
  private static boolean sound(ByteSource file, long from, long length) {
    CRC32 sum = new CRC32();
    byte[] some = new byte[FrameLimits.READ_BYTES];
    for (long at = from; at < from + length; ) {
      int count = (int) Math.min(some.length, from + length - at);
      file.read(at, some, 0, count);
      sum.update(some, 0, count);
      at += count;
    }
    if (from + length + 4 > file.size()) {
      return true; // cut off behind its data
    }
    file.read(from + length, some, 0, 4);
    return ByteBuffer.wrap(some).getInt(0) == (int) sum.getValue();
  }

  /** Whether all of the pixels' data matches its checksums; of a file that is not cut short. */
  static boolean pixelsSound(ByteSource file) {
    byte[] head = new byte[8];
    long at = SIGNATURE.length;
    for (int n = 0; n < MAX_CHUNKS && at + 8 <= file.size(); n++) {
      file.read(at, head, 0, 8);
      long length = ByteBuffer.wrap(head).getInt(0) & 0xffffffffL;
      String type = new String(head, 4, 4, StandardCharsets.ISO_8859_1);
      if (at + 8 + length > file.size() || type.equals("IEND")) {
        return true;
      }
      if (type.equals("IDAT") && !sound(file, at + 4, length + 4)) {
        return false;
      }
      at += 12 + length;
    }
    return true;
  }

  /** The bytes of a chunk, or null if it is not there or shorter than {@code least}. */
  byte @Nullable [] chunk(String type, int least) {
    byte[] bytes = kept.get(type);
    return bytes == null || bytes.length < least ? null : bytes;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Whether the file ends inside the pixels' data. */
  boolean cut() {
    return cut;
  }

  /** Whether the picture comes in seven passes (Adam7). */
  boolean interlaced() {
    return header(12) != 0;
  }

  /** Stored samples a pixel. */
  int stored() {
    return palette() ? 1 : (colour() ? 3 : 1) + (storedAlpha() ? 1 : 0);
  }

  /** Bits of a sample, or of an index into the palette. */
  int bits() {
    return header(8);
  }

  private int header(int at) {
    byte[] header = kept.get("IHDR");
    return header == null ? 0 : header[at] & 0xff;
  }

  boolean palette() {
    return header(9) == 3;
  }

  boolean colour() {
    return (header(9) & 2) != 0;
  }

  /** Whether alpha is stored with every pixel. */
  boolean storedAlpha() {
    return (header(9) & 4) != 0;
  }

  /** Whether one colour, or some of the palette, is transparent. */
  boolean transparency() {
    return !storedAlpha() && kept.containsKey("tRNS");
  }

  /** Whether depth and colour kind are one of the pairs that exist (section 11.2.2). */
  boolean sound() {
    int kind = header(9);
    int bits = bits();
    boolean deep = bits == 8 || bits == 16;
    boolean flat = bits == 1 || bits == 2 || bits == 4 || bits == 8;
    return switch (kind) {
      case 0 -> deep || flat;
      case 2, 4, 6 -> deep;
      case 3 -> flat && kept.containsKey("PLTE");
      default -> false;
    };
  }
}
