package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * One directory of tags of a TIFF file or of a camera record (TIFF 6.0, section 2). Values are read
 * only when asked for, and never more than the asker can use; an entry that lies about itself hurts
 * only the one who asks for it.
 */
final class TiffDirectory {
  private static final int RATIONAL = 5;
  private static final int SIGNED_RATIONAL = 10;
  private static final int FLOAT = 11;
  private static final int DOUBLE = 12;

  /** Bytes of a value by type; 0 where the type is unknown. */
  private static final int[] TYPE_BYTES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

  private final ByteSource in;
  private final TiffForm form;
  private final Map<Integer, Entry> entries = new HashMap<>();
  private final long next;

  /** Where the values of a tag lie. */
  private record Entry(int type, long count, long at) {}

  /**
   * Reads the directory at {@code at}.
   *
   * @throws FrameException if it lies outside the file or is too large
   */
  TiffDirectory(ByteSource in, TiffForm form, long at) {
    this.in = in;
    this.form = form;
    int head = form.countBytes();
    ByteBuffer counted = block(at, head);
    long count = form.big() ? counted.getLong(0) : counted.getShort(0) & 0xffff;
    if (count < 1 || count > FrameLimits.MAX_TAGS) {
      throw in.fail("is damaged: its directory of tags has " + count + " entries");
    }
    int length = (int) count * form.entryBytes();
    ByteBuffer table = block(at + head, length);
    for (int e = 0; e < length; e += form.entryBytes()) {
      add(table, e, at + head + e);
    }
    long end = at + head + length;
    this.next =
        end + form.wordBytes() <= in.size() ? form.word(block(end, form.wordBytes()), 0) : 0;
  }

  private void add(ByteBuffer table, int e, long place) {
    int tag = table.getShort(e) & 0xffff;
    int type = table.getShort(e + 2) & 0xffff;
    if (type >= TYPE_BYTES.length || TYPE_BYTES[type] == 0) {
      return;
    }
    long count = form.word(table, e + 4);
    int valueAt = 4 + form.wordBytes();
    boolean inline = count >= 0 && count <= form.wordBytes() / TYPE_BYTES[type];
    long at = inline ? place + valueAt : form.word(table, e + valueAt);
    entries.putIfAbsent(tag, new Entry(type, count, at));
  }

  /** Where the directory after this one lies, 0 if there is none. */
  long next() {
    return next;
  }

  /** Whether the tag is there and has a value. */
  boolean has(int tag) {
    Entry entry = entries.get(tag);
    return entry != null && entry.count != 0;
  }

  /** The first value of a tag of whole numbers, or {@code otherwise} if it is not there. */
  long number(int tag, long otherwise) {
    return has(tag) ? numbers(tag, Long.MAX_VALUE, 1)[0] : otherwise;
  }

  /**
   * All values of a tag of whole numbers; none if it is not there.
   *
   * @param most how many there may be
   * @throws FrameException if there are more, or they lie outside the file, or are not whole
   */
  long[] numbers(int tag, int most) {
    return numbers(tag, most, Integer.MAX_VALUE);
  }

  private long[] numbers(int tag, long most, int wanted) {
    Entry entry = entries.get(tag);
    if (entry == null) {
      return new long[0];
    }
    if (entry.type == RATIONAL || (entry.type >= SIGNED_RATIONAL && entry.type <= DOUBLE)) {
      throw in.fail("is damaged: its tag " + tag + " should hold whole numbers");
    }
    ByteBuffer values = values(tag, entry, most, wanted);
    int bytes = TYPE_BYTES[entry.type];
    long[] numbers = new long[values.limit() / bytes];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = whole(values, entry.type, i * bytes);
    }
    return numbers;
  }

  private static long whole(ByteBuffer in, int type, int at) {
    return switch (type) {
      case 1, 2, 7 -> in.get(at) & 0xff;
      case 3 -> in.getShort(at) & 0xffff;
      case 4, 13 -> in.getInt(at) & 0xffffffffL;
      case 6 -> in.get(at);
      case 8 -> in.getShort(at);
      case 9 -> in.getInt(at);
      default -> in.getLong(at);
    };
  }

  /** The first value of a tag as a number of any kind; NaN if it is not there or 0/0. */
  double real(int tag) {
    Entry entry = entries.get(tag);
    if (entry == null || entry.count == 0) {
      return Double.NaN;
    }
    ByteBuffer values = values(tag, entry, Long.MAX_VALUE, 1);
    return switch (entry.type) {
      case RATIONAL -> (values.getInt(0) & 0xffffffffL) / (double) (values.getInt(4) & 0xffffffffL);
      case SIGNED_RATIONAL -> values.getInt(0) / (double) values.getInt(4);
      case FLOAT -> values.getFloat(0);
      case DOUBLE -> values.getDouble(0);
      default -> whole(values, entry.type, 0);
    };
  }

  /** The bytes of a tag; none if it is not there. */
  byte[] bytes(int tag, int most) {
    Entry entry = entries.get(tag);
    return entry == null
        ? new byte[0]
        : values(tag, entry, most / Math.max(1, TYPE_BYTES[entry.type]), Integer.MAX_VALUE).array();
  }

  /** The type of a tag's values (TIFF 6.0, section 2); 0 if it is not there. */
  int type(int tag) {
    Entry entry = entries.get(tag);
    return entry == null ? 0 : entry.type;
  }

  /** How many values a tag has; 0 if it is not there. */
  long count(int tag) {
    Entry entry = entries.get(tag);
    return entry == null ? 0 : entry.count;
  }

  /**
   * The text of a tag up to its first zero byte, without outer spaces; empty if not there. Control
   * characters are spaces, since texts come from strangers and go to terminals.
   */
  String text(int tag) {
    Entry entry = entries.get(tag);
    if (entry == null || TYPE_BYTES[entry.type] != 1) {
      return "";
    }
    byte[] bytes = values(tag, entry, Long.MAX_VALUE, FrameLimits.MAX_TEXT).array();
    int end = 0;
    while (end < bytes.length && bytes[end] != 0) {
      end++;
    }
    return new String(bytes, 0, end, StandardCharsets.UTF_8).replaceAll("\\p{Cc}", " ").strip();
  }

  /** The first {@code wanted} values of an entry that may hold at most {@code most}. */
  private ByteBuffer values(int tag, Entry entry, long most, int wanted) {
    if (entry.count < 0 || entry.count > most) {
      throw in.fail("is damaged: its tag " + tag + " claims " + entry.count + " values");
    }
    long bytes = Math.min(entry.count, wanted) * TYPE_BYTES[entry.type];
    if (entry.at < 0 || entry.at > in.size() - bytes) {
      throw in.fail("is damaged: the values of its tag " + tag + " lie behind the file's end");
    }
    return block(entry.at, (int) bytes);
  }

  private ByteBuffer block(long at, int count) {
    if (at < 0 || at > in.size() - count) {
      throw in.fail("is damaged: a directory of tags lies behind the file's end");
    }
    byte[] bytes = new byte[count];
    in.read(at, bytes, 0, count);
    return ByteBuffer.wrap(bytes).order(form.order());
  }
}
