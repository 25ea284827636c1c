package org.duskply.engine.frame;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What stands before the first scan of a JPEG file (ITU-T T.81, annex B): the frame header, the
 * camera record and the pieces of the colour profile (ICC.1:2010, annex B.4).
 */
final class JpegSegments {
  private static final int SOI = 0xd8;
  private static final int EOI = 0xd9;
  private static final int SOS = 0xda;
  private static final int APP0 = 0xe0;
  private static final int MAX_SEGMENTS = 10_000;

  /**
   * Most scans. Each goes over the whole picture, however few bytes it takes; who makes a picture
   * come in stages makes a dozen.
   */
  private static final int MAX_SCANS = 100;

  private static final int MAX_STRAY_BYTES = 64 << 10;
  private static final byte[] ICC = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] JFIF = "JFIF\0".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] ADOBE = "Adobe".getBytes(StandardCharsets.US_ASCII);

  private final ByteSource file;
  private final byte[] window = new byte[4096];
  private long windowAt;
  private int windowCount;

  private byte @Nullable [] frame;
  private int process;
  private long firstScan = -1;
  private int together;
  private byte @Nullable [] exif;
  private boolean jfif;
  private int adobe = -1;
  private final List<byte[]> profilePieces = new ArrayList<>();
  private long profileBytes;

  private JpegSegments(ByteSource file) {
    this.file = file;
  }

  /**
   * Reads up to the first scan.
   *
   * @throws FrameException if there is no frame header before it
   */
  static JpegSegments read(ByteSource file) {
    JpegSegments segments = new JpegSegments(file);
    segments.walk();
    byte[] frame = segments.frame;
    if (frame == null || frame.length < 6 || frame.length < 6 + 3 * segments.components()) {
      throw file.fail("is a damaged JPEG: it does not say how large it is");
    }
    if (segments.gathered() && segments.scans() > MAX_SCANS) {
      throw file.fail("is a JPEG in more than " + MAX_SCANS + " scans; save it anew");
    }
    return segments;
  }

  private void walk() {
    long at = 2;
    for (int n = 0; n < MAX_SEGMENTS; n++) {
      at = nextMarker(at);
      if (at < 0 || at + 1 >= file.size()) {
        return;
      }
      int marker = at(at + 1);
      at += 2;
      if (marker == SOS || marker == EOI) {
        firstScan = marker == SOS ? at : -1;
        together = marker == SOS && at + 2 < file.size() ? at(at + 2) : 0;
        return;
      }
      if (marker == 0x01 || (marker >= 0xd0 && marker <= SOI)) {
        continue;
      }
      int length = at + 2 <= file.size() ? at(at) << 8 | at(at + 1) : 0;
      if (length < 2 || at + length > file.size()) {
        return;
      }
      take(marker, at + 2, length - 2);
      at += length;
    }
  }

  /** How many scans there are, counted no further than one too many. */
  private int scans() {
    int scans = 0;
    int marker = SOS;
    for (long at = firstScan; at >= 0 && marker != EOI && scans <= MAX_SCANS; ) {
      scans += marker == SOS ? 1 : 0;
      boolean alone = marker >= 0xd0 && marker <= SOI;
      int length = alone || at + 2 > file.size() ? 0 : at(at) << 8 | at(at + 1);
      at = markerAfter(at + length);
      marker = at < 0 ? EOI : at(at - 1);
    }
    return scans;
  }

  /** The place behind the next marker, −1 if there is none. */
  private long markerAfter(long from) {
    for (long at = from; at + 1 < file.size(); at++) {
      if (at(at) == 0xff && at(at + 1) != 0xff && at(at + 1) != 0) {
        return at + 2;
      }
    }
    return -1;
  }

  /** The place of the next marker's last fill byte, −1 if there is none near. */
  private long nextMarker(long from) {
    for (long at = from; at + 1 < file.size() && at < from + MAX_STRAY_BYTES; at++) {
      if (at(at) == 0xff && at(at + 1) != 0xff && at(at + 1) != 0) {
        return at;
      }
    }
    return -1;
  }

  private int at(long place) {
    if (place < windowAt || place >= windowAt + windowCount) {
      windowAt = place;
      windowCount = (int) Math.min(window.length, file.size() - place);
      file.read(windowAt, window, 0, windowCount);
    }
    return window[(int) (place - windowAt)] & 0xff;
  }

  private void take(int marker, long at, int length) {
    if (marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc) {
      if (frame == null) {
        frame = bytes(at, length);
        process = marker;
      }
    } else if (marker == APP0) {
      jfif |= starts(bytes(at, Math.min(length, 16)), JFIF);
    } else if (marker == APP0 + 1 && exif == null) {
      byte[] segment = bytes(at, length);
      exif = ExifReader.startInSegment(segment) < 0 ? null : segment;
    } else if (marker == APP0 + 2) {
      byte[] segment = bytes(at, length);
      if (starts(segment, ICC) && profileBytes <= FrameLimits.MAX_PROFILE_BYTES) {
        profilePieces.add(segment);
        profileBytes += length;
      }
    } else if (marker == APP0 + 14) {
      byte[] segment = bytes(at, Math.min(length, 16));
      adobe = starts(segment, ADOBE) && segment.length >= 12 ? segment[11] & 0xff : adobe;
    }
  }

  private byte[] bytes(long at, int length) {
    byte[] bytes = new byte[length];
    file.read(at, bytes, 0, length);
    return bytes;
  }

  private static boolean starts(byte[] bytes, byte[] with) {
    for (int i = 0; i < with.length; i++) {
      if (i >= bytes.length || bytes[i] != with[i]) {
        return false;
      }
    }
    return true;
  }

  private int header(int at) {
    byte[] header = frame;
    return header == null ? 0 : header[at] & 0xff;
  }

  /** Bits of a sample. */
  int precision() {
    return header(0);
  }

  int height() {
    return header(1) << 8 | header(2);
  }

  int width() {
    return header(3) << 8 | header(4);
  }

  int components() {
    return header(5);
  }

  /** Whether several scans make the picture, so that the decoder holds all coefficients. */
  boolean gathered() {
    return progressive() || together < components();
  }

  /** Whether all coefficients must be there before the first row can be made. */
  boolean progressive() {
    return (process & 3) == 2;
  }

  /** Whether it is of the kind without loss (annex H), which shares nothing with the others. */
  boolean lossless() {
    return (process & 3) == 3;
  }

  /**
   * Whether three components are luma and chroma, decided as is common practice: JFIF files always
   * are; then the Adobe marker decides; then components named R, G, B are what they say.
   */
  boolean luma() {
    if (components() != 3) {
      return false;
    }
    if (jfif || adobe >= 0) {
      return jfif || adobe != 0;
    }
    return header(6) != 'R' || header(9) != 'G' || header(12) != 'B';
  }

  /** Whether four components are luma, chroma and black (Adobe's transform 2). */
  boolean lumaAndBlack() {
    return components() == 4 && adobe == 2;
  }

  /**
   * Whether four components are stored turned round, 255 being no ink: common practice of every
   * writer that leaves an Adobe marker.
   */
  boolean turned() {
    return components() == 4 && adobe >= 0;
  }

  /** The EXIF segment, its mark included. */
  byte @Nullable [] exif() {
    return exif;
  }

  /** The colour profile, put together from its numbered pieces. */
  byte @Nullable [] profile(List<String> notices) {
    int count = profilePieces.size();
    if (count == 0) {
      return null;
    }
    byte[][] pieces = new byte[count][];
    int total = 0;
    for (byte[] piece : profilePieces) {
      int number = piece.length < 14 ? 0 : piece[12] & 0xff;
      boolean fits =
          number >= 1
              && number <= count
              && (piece[13] & 0xff) == count
              && pieces[number - 1] == null;
      if (!fits || profileBytes > FrameLimits.MAX_PROFILE_BYTES) {
        notices.add(
            "The pieces of the embedded colour profile do not fit together; it was not used.");
        return null;
      }
      pieces[number - 1] = piece;
      total += piece.length - 14;
    }
    byte[] profile = new byte[total];
    int at = 0;
    for (byte[] piece : pieces) {
      System.arraycopy(piece, 14, profile, at, piece.length - 14);
      at += piece.length - 14;
    }
    return profile;
  }
}
