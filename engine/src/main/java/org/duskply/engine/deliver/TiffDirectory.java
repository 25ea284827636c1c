package org.duskply.engine.deliver;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;

/**
 * The head of a little-endian TIFF with one image: header, directory, and the values that do not
 * fit into it (TIFF 6.0 section 2). Its size depends on the kinds and counts of the values alone.
 */
final class TiffDirectory {
  private static final int HEADER = 8;
  private static final int ENTRY = 12;
  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int RATIONAL = 5;
  private static final int UNDEFINED = 7;

  /** An entry's value as it stands in the file. */
  private static final class Entry {
    final int type;
    final int count;
    final byte[] value;

    Entry(int type, int count, byte[] value) {
      this.type = type;
      this.count = count;
      this.value = value;
    }
  }

  private final TreeMap<Integer, Entry> entries = new TreeMap<>();

  void shorts(int tag, int... values) {
    byte[] value = new byte[2 * values.length];
    ByteBuffer b = littleEndian(value);
    for (int v : values) {
      b.putShort((short) v);
    }
    entries.put(tag, new Entry(SHORT, values.length, value));
  }

  /** Unsigned numbers below 2³². */
  void longs(int tag, long... values) {
    byte[] value = new byte[4 * values.length];
    ByteBuffer b = littleEndian(value);
    for (long v : values) {
      b.putInt((int) v);
    }
    entries.put(tag, new Entry(LONG, values.length, value));
  }

  /** A whole number as a fraction. */
  void rational(int tag, int number) {
    byte[] value = new byte[8];
    littleEndian(value).putInt(number).putInt(1);
    entries.put(tag, new Entry(RATIONAL, 1, value));
  }

  /** Text, kept to ASCII: other characters become {@code ?}. */
  void ascii(int tag, String text) {
    byte[] value = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    entries.put(tag, new Entry(ASCII, value.length, value));
  }

  void undefined(int tag, byte[] value) {
    entries.put(tag, new Entry(UNDEFINED, value.length, value.clone()));
  }

  /** Bytes of {@link #head}. */
  int size() {
    int size = directoryEnd();
    for (Entry e : entries.values()) {
      size += outside(e);
    }
    return size;
  }

  /** Header, directory and values; what follows begins on an even byte. */
  byte[] head() {
    byte[] head = new byte[size()];
    ByteBuffer b = littleEndian(head);
    b.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(HEADER);
    b.putShort((short) entries.size());
    int at = directoryEnd();
    for (var tagged : entries.entrySet()) {
      Entry e = tagged.getValue();
      b.putShort((short) (int) tagged.getKey()).putShort((short) e.type).putInt(e.count);
      if (outside(e) == 0) {
        b.put(e.value).position(b.position() + 4 - e.value.length);
      } else {
        b.putInt(at);
        at += outside(e);
      }
    }
    b.putInt(0); // no further image
    for (Entry e : entries.values()) {
      if (outside(e) > 0) {
        b.put(e.value).position(b.position() + outside(e) - e.value.length);
      }
    }
    return head;
  }

  private int directoryEnd() {
    return HEADER + 2 + ENTRY * entries.size() + 4;
  }

  /** Bytes that a value takes outside the directory, rounded up to whole words. */
  private static int outside(Entry e) {
    return e.value.length <= 4 ? 0 : e.value.length + (e.value.length & 1);
  }

  private static ByteBuffer littleEndian(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }
}
