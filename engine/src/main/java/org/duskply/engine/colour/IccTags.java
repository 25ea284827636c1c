package org.duskply.engine.colour;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.duskply.engine.colour.IccException.Reason;
import org.jspecify.annotations.Nullable;

/**
 * The header and tag table of an ICC profile, and the bytes of single tags (ICC.1:2010, clauses 7.2
 * and 7.3). Nothing is copied, and nothing is looked at that was not asked for, so that damage in a
 * tag nobody needs does no harm. Every offset is checked in 64 bits against the size that the
 * header gives, and that against the bytes there are.
 */
final class IccTags {
  private static final int HEADER = 128;
  private static final int TABLE = HEADER + 4;
  private static final int ENTRY = 12;

  private final ByteBuffer bytes;
  private final int count;

  private IccTags(ByteBuffer bytes, int count) {
    this.bytes = bytes;
    this.count = count;
  }

  static IccTags of(byte[] profile) {
    if (profile.length > IccReader.MAX_BYTES) {
      throw new IccException(
          Reason.TOO_LARGE,
          "The colour profile is longer than "
              + IccReader.MAX_BYTES
              + " bytes, the most that is read.");
    }
    ByteBuffer all = ByteBuffer.wrap(profile);
    if (profile.length < TABLE || !signature(all, 36).equals("acsp")) {
      throw new IccException(
          Reason.NOT_A_PROFILE, "The colour profile is not an ICC profile: its mark is missing.");
    }
    long size = Integer.toUnsignedLong(all.getInt(0));
    if (size > profile.length) {
      throw new IccException(
          Reason.CUT_SHORT,
          "The colour profile is cut short: it should have "
              + size
              + " bytes and has "
              + profile.length
              + ".");
    }
    long count = Integer.toUnsignedLong(all.getInt(HEADER));
    if (count > IccReader.MAX_TAGS) {
      throw new IccException(
          Reason.TOO_LARGE,
          "The colour profile claims "
              + count
              + " entries, more than the "
              + IccReader.MAX_TAGS
              + " that are read.");
    }
    if (TABLE + ENTRY * count > size) {
      throw new IccException(
          Reason.DAMAGED,
          "The colour profile is damaged: its table of " + count + " entries passes its end.");
    }
    return new IccTags(all.slice(0, (int) size), (int) count);
  }

  /** The four characters at a place in the header. */
  String headerSignature(int at) {
    return signature(bytes, at);
  }

  /** The number before the first point of the profile's version. */
  int majorVersion() {
    return bytes.get(8) & 0xFF;
  }

  boolean has(String tag) {
    return entry(tag) >= 0;
  }

  /** Where the tag's bytes begin, which tells whether two tags share them; −1 without the tag. */
  int offset(String tag) {
    int entry = entry(tag);
    return entry < 0 ? -1 : bytes.getInt(entry + 4);
  }

  /**
   * The bytes of a tag, or null without it.
   *
   * @throws IccException if they pass the end of the profile or are fewer than {@code least}
   */
  @Nullable ByteBuffer find(String tag, int least) {
    int entry = entry(tag);
    if (entry < 0) {
      return null;
    }
    long offset = Integer.toUnsignedLong(bytes.getInt(entry + 4));
    long size = Integer.toUnsignedLong(bytes.getInt(entry + 8));
    if (offset + size > bytes.limit()) {
      throw damaged(tag, "passes the end of the profile");
    }
    if (size < least) {
      throw damaged(tag, "has " + size + " bytes, too few");
    }
    return bytes.slice((int) offset, (int) size);
  }

  /** As {@link #find}, but a missing tag is an error. */
  ByteBuffer need(String tag, int least) {
    ByteBuffer found = find(tag, least);
    if (found == null) {
      throw new IccException(
          Reason.DAMAGED, "The colour profile is damaged: its entry " + tag + " is missing.");
    }
    return found;
  }

  /** The four characters that say what kind of numbers a tag holds, or what else stands there. */
  static String signature(ByteBuffer bytes, int at) {
    byte[] four = new byte[4];
    bytes.get(at, four);
    return new String(four, StandardCharsets.ISO_8859_1);
  }

  /** An s15Fixed16Number. */
  static double fixed(ByteBuffer bytes, int at) {
    return bytes.getInt(at) / 65536.0;
  }

  static IccException damaged(String tag, String how) {
    return new IccException(
        Reason.DAMAGED, "The colour profile is damaged: its entry " + tag + " " + how + ".");
  }

  private int entry(String tag) {
    for (int i = 0; i < count; i++) {
      int at = TABLE + ENTRY * i;
      if (signature(bytes, at).equals(tag)) {
        return at;
      }
    }
    return -1;
  }
}
