package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * A TIFF file with one directory, of those tags alone that say how its first picture is stored: its
 * own bytes, a header of ours before them and the directory behind. Strips and tiles keep their
 * places. The general-purpose reader follows links to other directories through each other and
 * reads every value it meets; here there is neither link nor value that we did not check.
 *
 * @param head in place of the file's own first bytes
 * @param size of the file
 * @param tail from the next even place behind the file's end on
 */
record TiffExcerpt(byte[] head, long size, byte[] tail) {
  /** How samples are stored (TIFF 6.0), JPEG's tables, and the settings of fax codes. */
  private static final int[] KEPT = {
    254, 256, 257, 258, 259, 262, 266, 273, 277, 278, 279, 284, 292, 293, 317, 320, 322, 323, 324,
    325, 338, 339, 347, 529, 530, 531, 532
  };

  /** Most bytes of a tag's values: the places of {@link FrameLimits#MAX_BLOCKS} blocks. */
  private static final int MOST_BYTES = 8 * FrameLimits.MAX_BLOCKS;

  /** Takes from a file what the excerpt needs beside the file itself. */
  static TiffExcerpt read(ByteSource file, TiffForm form, TiffDirectory first) {
    long at = even(file.size());
    if (!form.big() && at > 0xffff_ffffL - 2L * MOST_BYTES) {
      throw file.fail("is too large for its kind of TIFF; save it as a plain TIFF in strips");
    }
    return new TiffExcerpt(head(form, at), file.size(), directory(form, first, at));
  }

  private static long even(long place) {
    return place + (place & 1);
  }

  private static byte[] head(TiffForm form, long directory) {
    ByteBuffer head = ByteBuffer.allocate(form.big() ? 16 : 8).order(form.order());
    String order = form.order() == ByteOrder.BIG_ENDIAN ? "MM" : "II";
    head.put(order.getBytes(StandardCharsets.US_ASCII));
    if (form.big()) {
      head.putShort((short) 43).putShort((short) 8).putShort((short) 0).putLong(directory);
    } else {
      head.putShort((short) 42).putInt((int) directory);
    }
    return head.array();
  }

  /** The directory that stands at {@code place}, with the values that do not fit into it. */
  private static byte[] directory(TiffForm form, TiffDirectory first, long place) {
    int entries = 0;
    long outside = 0;
    for (int tag : KEPT) {
      int bytes = first.bytes(tag, MOST_BYTES).length;
      entries += first.has(tag) ? 1 : 0;
      outside += bytes > form.wordBytes() ? even(bytes) : 0;
    }
    int own = form.countBytes() + entries * form.entryBytes() + form.wordBytes();
    ByteBuffer out = ByteBuffer.allocate(Math.toIntExact(own + outside)).order(form.order());
    if (form.big()) {
      out.putLong(entries);
    } else {
      out.putShort((short) entries);
    }
    int at = own;
    for (int tag : KEPT) {
      if (first.has(tag)) {
        byte[] value = first.bytes(tag, MOST_BYTES);
        out.putShort((short) tag).putShort((short) first.type(tag));
        word(form, out, first.count(tag));
        if (value.length > form.wordBytes()) {
          word(form, out, place + at);
          out.put(at, value);
          at += (int) even(value.length);
        } else {
          out.put(value).position(out.position() + form.wordBytes() - value.length);
        }
      }
    }
    return out.array(); // the link to a next directory stays 0
  }

  private static void word(TiffForm form, ByteBuffer out, long value) {
    if (form.big()) {
      out.putLong(value);
    } else {
      out.putInt((int) value);
    }
  }

  /** The excerpt's bytes over those of the open file. */
  ByteSource of(ByteSource file) {
    return new Over(this, file);
  }

  private record Over(TiffExcerpt excerpt, ByteSource file) implements ByteSource {
    @Override
    public long size() {
      return even(excerpt.size) + excerpt.tail.length;
    }

    @Override
    public void read(long at, byte[] into, int from, int count) {
      int done = 0;
      while (done < count) {
        long here = at + done;
        int left = count - done;
        if (here < excerpt.head.length) {
          int some = (int) Math.min(left, excerpt.head.length - here);
          System.arraycopy(excerpt.head, (int) here, into, from + done, some);
          done += some;
        } else if (here < excerpt.size) {
          int some = (int) Math.min(left, excerpt.size - here);
          file.read(here, into, from + done, some);
          done += some;
        } else if (here < even(excerpt.size)) {
          into[from + done++] = 0;
        } else {
          int behind = (int) (here - even(excerpt.size));
          System.arraycopy(excerpt.tail, behind, into, from + done, left);
          done += left;
        }
      }
    }

    @Override
    public FrameException fail(String predicate) {
      return file.fail(predicate);
    }

    @Override
    public FrameException fail(String predicate, Throwable cause) {
      return file.fail(predicate, cause);
    }
  }
}
