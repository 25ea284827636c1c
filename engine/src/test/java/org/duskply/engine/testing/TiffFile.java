package org.duskply.engine.testing;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.zip.Deflater;

/**
 * Writes TIFF files byte by byte from the text of TIFF 6.0, for tests: every variant that the
 * engine's reader takes, and files that lie. It shares no code with the engine. Slow and plain on
 * purpose.
 */
public final class TiffFile {
  /** The stored sample of a pixel, in code values. */
  public interface Picture {
    int sample(int x, int y, int channel);
  }

  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int LONG8 = 16;

  private record Field(int type, long count, byte[] value) {}

  private final int width;
  private final int height;
  private final int samples;
  private final int bits;
  private final Picture picture;
  private ByteOrder order = ByteOrder.LITTLE_ENDIAN;
  private boolean big;
  private int compression = 1;
  private int predictor = 1;
  private boolean tiled;
  private int blockWidth;
  private int blockHeight;
  private boolean fullLastStrip;
  private boolean planar;
  private boolean mirrored;
  private UnaryOperator<byte[]> damage = UnaryOperator.identity();
  private final Map<Integer, Field> fields = new TreeMap<>();
  private final List<Integer> left = new ArrayList<>();
  private final Map<Integer, Field> camera = new TreeMap<>();

  public TiffFile(int width, int height, int samples, int bits, Picture picture) {
    this.width = width;
    this.height = height;
    this.samples = samples;
    this.bits = bits;
    this.picture = picture;
    this.blockWidth = width;
    this.blockHeight = height;
  }

  public TiffFile order(ByteOrder to) {
    order = to;
    return this;
  }

  /** Writes a BigTIFF. */
  public TiffFile big() {
    big = true;
    return this;
  }

  /** 1 none, 5 LZW, 8 or 32946 deflate, 32773 PackBits. */
  public TiffFile compression(int to) {
    compression = to;
    return this;
  }

  /** 2 differences, 3 differences of bytes sorted by weight (Adobe's TIFF Technical Note 3). */
  public TiffFile predictor(int to) {
    predictor = to;
    return this;
  }

  public TiffFile strips(int rows) {
    blockHeight = rows;
    return this;
  }

  /** Stores each sample of all pixels apart (tag 284). */
  public TiffFile planar() {
    planar = true;
    return shorts(284, 2);
  }

  /** Stores bytes with their lowest bit first (tag 266). */
  public TiffFile mirrored() {
    mirrored = true;
    return shorts(266, 2);
  }

  /** Writes the last strip with all its rows, as some writers do. */
  public TiffFile fullLastStrip() {
    fullLastStrip = true;
    return this;
  }

  public TiffFile tiles(int across, int down) {
    tiled = true;
    blockWidth = across;
    blockHeight = down;
    return this;
  }

  /** Changes each block's stored bytes. */
  public TiffFile damage(UnaryOperator<byte[]> how) {
    damage = how;
    return this;
  }

  /** Sets a tag of 16-bit numbers, in place of what would be there. */
  public TiffFile shorts(int tag, int... values) {
    ByteBuffer out = ByteBuffer.allocate(2 * values.length).order(order);
    for (int v : values) {
      out.putShort((short) v);
    }
    fields.put(tag, new Field(SHORT, values.length, out.array()));
    return this;
  }

  /** Sets a tag of 32-bit numbers, in place of what would be there. */
  public TiffFile longs(int tag, long... values) {
    fields.put(tag, longField(values));
    return this;
  }

  /** Sets a tag to raw bytes of a type; {@code count} may lie. */
  public TiffFile raw(int tag, int type, long count, byte[] value) {
    fields.put(tag, new Field(type, count, value));
    return this;
  }

  /** Leaves a tag out. */
  public TiffFile without(int tag) {
    left.add(tag);
    return this;
  }

  /** Adds an entry to the camera's own directory (EXIF). */
  public TiffFile camera(int tag, int type, long count, byte[] value) {
    camera.put(tag, new Field(type, count, value));
    return this;
  }

  /** A rational number's eight bytes. */
  public byte[] rational(long above, long below) {
    return ByteBuffer.allocate(8).order(order).putInt((int) above).putInt((int) below).array();
  }

  private Field longField(long... values) {
    ByteBuffer out = ByteBuffer.allocate((big ? 8 : 4) * values.length).order(order);
    for (long v : values) {
      if (big) {
        out.putLong(v);
      } else {
        out.putInt((int) v);
      }
    }
    return new Field(big ? LONG8 : LONG, values.length, out.array());
  }

  /** The file: header, blocks, camera directory, directory. */
  public byte[] bytes() {
    int across = (width - 1) / blockWidth + 1;
    int down = (height - 1) / blockHeight + 1;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[16]);
    int inPlane = across * down;
    long[] offsets = new long[inPlane * (planar ? samples : 1)];
    long[] counts = new long[offsets.length];
    for (int b = 0; b < offsets.length; b++) {
      int first = planar ? b / inPlane : 0;
      int last = planar ? first : samples - 1;
      byte[] plain = block(b % across, b % inPlane / across, first, last);
      byte[] block = damage.apply(mirror(pack(plain)));
      even(out);
      offsets[b] = out.size();
      counts[b] = block.length;
      out.writeBytes(block);
    }
    if (!camera.isEmpty()) {
      even(out);
      longs(34665, out.size());
      directory(out, camera);
    }
    even(out);
    long first = out.size();
    directory(out, allFields(offsets, counts));
    byte[] file = out.toByteArray();
    header(ByteBuffer.wrap(file).order(order), first);
    return file;
  }

  private void header(ByteBuffer file, long first) {
    byte letter = (byte) (order == ByteOrder.LITTLE_ENDIAN ? 'I' : 'M');
    file.put(0, letter).put(1, letter).putShort(2, (short) (big ? 43 : 42));
    if (big) {
      file.putShort(4, (short) 8).putLong(8, first);
    } else {
      file.putInt(4, (int) first);
    }
  }

  private Map<Integer, Field> allFields(long[] offsets, long[] counts) {
    Map<Integer, Field> said = new TreeMap<>(fields);
    int[] depths = new int[samples];
    Arrays.fill(depths, bits);
    longs(256, width).longs(257, height).shorts(258, depths).shorts(259, compression);
    shorts(262, samples >= 3 ? 2 : 1).shorts(277, samples);
    if (predictor != 1) {
      shorts(317, predictor);
    }
    if (tiled) {
      longs(322, blockWidth).longs(323, blockHeight).longs(324, offsets).longs(325, counts);
    } else {
      longs(278, blockHeight).longs(273, offsets).longs(279, counts);
    }
    fields.putAll(said);
    left.forEach(fields::remove);
    return fields;
  }

  private void directory(ByteArrayOutputStream out, Map<Integer, Field> entries) {
    int word = big ? 8 : 4;
    int entry = 4 + 2 * word;
    int start = out.size();
    int length = (big ? 8 : 2) + entries.size() * entry + word;
    ByteBuffer table = ByteBuffer.allocate(length).order(order);
    ByteArrayOutputStream values = new ByteArrayOutputStream();
    if (big) {
      table.putLong(entries.size());
    } else {
      table.putShort((short) entries.size());
    }
    entries.forEach(
        (tag, field) -> {
          table.putShort((short) (int) tag).putShort((short) field.type);
          word(table, field.count);
          if (field.value.length <= word) {
            table.put(Arrays.copyOf(field.value, word));
          } else {
            word(table, start + length + values.size());
            values.writeBytes(field.value);
            even(values);
          }
        });
    word(table, 0);
    out.writeBytes(table.array());
    out.writeBytes(values.toByteArray());
  }

  private void word(ByteBuffer out, long value) {
    if (big) {
      out.putLong(value);
    } else {
      out.putInt((int) value);
    }
  }

  private static void even(ByteArrayOutputStream out) {
    if (out.size() % 2 == 1) {
      out.write(0);
    }
  }

  private byte[] mirror(byte[] stored) {
    for (int i = 0; mirrored && i < stored.length; i++) {
      stored[i] = (byte) (Integer.reverse(stored[i]) >>> 24);
    }
    return stored;
  }

  /** The unpacked bytes of a block, differences taken; tiles are filled up by the edge value. */
  private byte[] block(int bx, int by, int first, int last) {
    int top = by * blockHeight;
    int rows = tiled || fullLastStrip ? blockHeight : Math.min(blockHeight, height - top);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int y = 0; y < rows; y++) {
      Bits row = new Bits();
      for (int x = 0; x < blockWidth; x++) {
        for (int c = first; c <= last; c++) {
          int v = at(bx * blockWidth + x, top + y, c);
          int before = predictor == 2 && x > 0 ? at(bx * blockWidth + x - 1, top + y, c) : 0;
          put(row, v - before);
        }
      }
      byte[] bytes = row.bytes();
      out.writeBytes(predictor == 3 ? sorted(bytes, last - first + 1) : bytes);
    }
    return out.toByteArray();
  }

  /** One byte of each weight after the other, the highest first, then differences of bytes. */
  private byte[] sorted(byte[] row, int step) {
    int weights = bits / 8;
    int count = row.length / weights;
    byte[] planes = new byte[row.length];
    for (int i = 0; i < count; i++) {
      for (int w = 0; w < weights; w++) {
        int stored = order == ByteOrder.BIG_ENDIAN ? w : weights - 1 - w;
        planes[w * count + i] = row[i * weights + stored];
      }
    }
    for (int i = planes.length - 1; i >= step; i--) {
      planes[i] -= planes[i - step];
    }
    return planes;
  }

  private int at(int x, int y, int c) {
    return picture.sample(Math.min(x, width - 1), Math.min(y, height - 1), c);
  }

  /** Whole bytes in the file's order, other depths from the highest bit on. */
  private void put(Bits out, int v) {
    if (bits % 8 != 0) {
      out.put(v & (1 << bits) - 1, bits);
      return;
    }
    for (int b = 0; b < bits; b += 8) {
      int shift = order == ByteOrder.BIG_ENDIAN ? bits - 8 - b : b;
      out.put(v >> shift & 0xff, 8);
    }
  }

  private byte[] pack(byte[] plain) {
    return switch (compression) {
      case 5 -> lzw(plain);
      case 8, 32946 -> deflate(plain);
      case 32773 -> packbits(plain);
      default -> plain;
    };
  }

  /** TIFF 6.0, section 9: runs of three and more equal bytes are told, others are copied. */
  public static byte[] packbits(byte[] plain) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int from = 0;
    for (int at = 0; at < plain.length; ) {
      int same = 1;
      while (at + same < plain.length && same < 128 && plain[at + same] == plain[at]) {
        same++;
      }
      if (same >= 3) {
        literal(plain, from, at, out);
        out.write(1 - same);
        out.write(plain[at]);
        at += same;
        from = at;
      } else {
        at++;
      }
    }
    literal(plain, from, plain.length, out);
    return out.toByteArray();
  }

  private static void literal(byte[] plain, int from, int to, ByteArrayOutputStream out) {
    for (int at = from; at < to; at += 128) {
      int run = Math.min(128, to - at);
      out.write(run - 1);
      out.write(plain, at, run);
    }
  }

  /** The zlib form. */
  public static byte[] deflate(byte[] plain) {
    Deflater deflater = new Deflater(6);
    deflater.setInput(plain);
    deflater.finish();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] some = new byte[8192];
    while (!deflater.finished()) {
      out.write(some, 0, deflater.deflate(some));
    }
    deflater.end();
    return out.toByteArray();
  }

  /**
   * TIFF 6.0, section 13, from its description: strings are kept as text in a map; Clear is written
   * first and whenever code 4094 has been given out.
   */
  public static byte[] lzw(byte[] plain) {
    Bits out = new Bits();
    Map<String, Integer> table = new HashMap<>();
    int free = reset(table);
    int width = 9;
    out.put(256, width);
    String so = "";
    for (byte b : plain) {
      String longer = so + (char) (b & 0xff);
      if (table.containsKey(longer)) {
        so = longer;
        continue;
      }
      out.put(table.get(so), width);
      table.put(longer, free++);
      if (free == 4095) {
        out.put(256, width);
        free = reset(table);
        width = 9;
      } else if (free == 512 || free == 1024 || free == 2048) {
        // "As soon as we add table entry 511, we switch to 10-bit codes", and so on.
        width++;
      }
      so = "" + (char) (b & 0xff);
    }
    if (!so.isEmpty()) {
      out.put(table.get(so), width);
      free++;
      if (free == 512 || free == 1024 || free == 2048) {
        width++;
      }
    }
    out.put(257, width);
    return out.bytes();
  }

  private static int reset(Map<String, Integer> table) {
    table.clear();
    for (int c = 0; c < 256; c++) {
      table.put("" + (char) c, c);
    }
    return 258;
  }

  /** Bits, highest first. */
  private static final class Bits {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private long held;
    private int count;

    void put(int code, int width) {
      held = held << width | code;
      count += width;
      while (count >= 8) {
        out.write((int) (held >> (count - 8)));
        count -= 8;
      }
    }

    byte[] bytes() {
      if (count > 0) {
        out.write((int) (held << (8 - count)));
        count = 0;
      }
      return out.toByteArray();
    }
  }
}
