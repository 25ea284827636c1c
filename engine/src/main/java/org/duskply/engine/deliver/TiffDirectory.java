package org.duskply.engine.deliver;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A directory of a little-endian TIFF with its values and the directories below it (TIFF 6.0
 * section 2), and the head of a file that begins with it. Its size depends on the kinds and counts
 * of the values alone.
 */
final class TiffDirectory {
  private static final int HEADER = 8;
  private static final int ENTRY = 12;
  private static final int BYTE = 1;
  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int RATIONAL = 5;
  private static final int UNDEFINED = 7;

  /** An entry's value as it stands in the file, or the directory whose place is its value. */
  private static final class Entry {
    final int type;
    final int count;
    final byte[] value;
    final @Nullable TiffDirectory below;

    Entry(int type, int count, byte[] value, @Nullable TiffDirectory below) {
      this.type = type;
      this.count = count;
      this.value = value;
      this.below = below;
    }

    /** Bytes that stand outside the directory, rounded up to whole words. */
    int outside() {
      if (below != null) {
        return below.length();
      }
      return value.length <= 4 ? 0 : value.length + (value.length & 1);
    }
  }

  private final TreeMap<Integer, Entry> entries = new TreeMap<>();

  void shorts(int tag, int... values) {
    byte[] value = new byte[2 * values.length];
    ByteBuffer b = littleEndian(value);
    for (int v : values) {
      b.putShort((short) v);
    }
    put(tag, SHORT, values.length, value);
  }

  /** Unsigned numbers below 2³². */
  void longs(int tag, long... values) {
    byte[] value = new byte[4 * values.length];
    ByteBuffer b = littleEndian(value);
    for (long v : values) {
      b.putInt((int) v);
    }
    put(tag, LONG, values.length, value);
  }

  /** A whole number as a fraction. */
  void rational(int tag, int number) {
    byte[] value = new byte[8];
    littleEndian(value).putInt(number).putInt(1);
    put(tag, RATIONAL, 1, value);
  }

  /** Text in UTF-8, of which ASCII is the part that every reader knows. */
  void text(int tag, String text) {
    byte[] value = (text + "\0").getBytes(StandardCharsets.UTF_8);
    put(tag, ASCII, value.length, value);
  }

  void bytes(int tag, byte[] value) {
    put(tag, BYTE, value.length, value.clone());
  }

  void undefined(int tag, byte[] value) {
    put(tag, UNDEFINED, value.length, value.clone());
  }

  /** A directory that the tag points to. */
  void directory(int tag, TiffDirectory below) {
    entries.put(tag, new Entry(LONG, 1, new byte[4], below));
  }

  private void put(int tag, int type, int count, byte[] value) {
    entries.put(tag, new Entry(type, count, value, null));
  }

  /** Bytes of {@link #head}. */
  int size() {
    return HEADER + length();
  }

  /** Header, directory and values; what follows begins on an even byte. */
  byte[] head() {
    ByteBuffer b = littleEndian(new byte[size()]);
    b.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(HEADER);
    write(b);
    return b.array();
  }

  /** Bytes of the directory, of its values and of what lies below it. */
  private int length() {
    int length = ownLength();
    for (Entry e : entries.values()) {
      length = Math.addExact(length, e.outside());
    }
    return length;
  }

  /** Count, entries, and the place of a next directory. */
  private int ownLength() {
    return 2 + ENTRY * entries.size() + 4;
  }

  /** Writes all of it where the buffer stands, which is its place in the file. */
  private void write(ByteBuffer b) {
    int at = b.position() + ownLength();
    b.putShort((short) entries.size());
    for (var tagged : entries.entrySet()) {
      Entry e = tagged.getValue();
      b.putShort((short) (int) tagged.getKey()).putShort((short) e.type).putInt(e.count);
      if (e.outside() == 0) {
        b.put(e.value).position(b.position() + 4 - e.value.length);
      } else {
        b.putInt(at);
        at += e.outside();
      }
    }
    b.putInt(0); // no next one
    for (Entry e : entries.values()) {
      if (e.below != null) {
        e.below.write(b);
      } else if (e.outside() > 0) {
        b.put(e.value).position(b.position() + e.outside() - e.value.length);
      }
    }
  }

  private static ByteBuffer littleEndian(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }
}
