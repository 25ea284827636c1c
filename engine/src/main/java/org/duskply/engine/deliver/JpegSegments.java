package org.duskply.engine.deliver;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The segments of a JPEG that tell of the picture, behind the one of JFIF: EXIF in APP1 (EXIF 2.32
 * section 4.7.2), XMP in APP1 (ISO 16684-3), IIM as an image resource block in APP13, and the
 * profile in APP2 (ICC.1, embedding in JFIF). XMP and IIM are there where the picture has captions.
 */
final class JpegSegments {
  /** Most bytes of XMP in one segment, by ISO 16684-3. */
  static final int XMP_PART = 65_502;

  /**
   * Bytes of profile in one segment: a segment's 65533 less the mark, its number and their count.
   */
  static final int PROFILE_PART = 65_519;

  private static final int APP1 = 0xE1;
  private static final int APP2 = 0xE2;
  private static final int APP13 = 0xED;

  // What each begins with, to the letter.
  private static final byte[] EXIF = latin("Exif\0\0");
  private static final byte[] XMP = latin("http://ns.adobe.com/xap/1.0/\0");
  private static final byte[] RESOURCES = latin("Photoshop 3.0\0");
  private static final byte[] IIM_BLOCK = latin("8BIM\u0004\u0004\0\0"); // number 0404, no name
  private static final byte[] PROFILE = latin("ICC_PROFILE\0");

  /** A segment: the number of its marker, and what follows its length. */
  record Segment(int marker, byte[] data) {}

  private JpegSegments() {}

  /** All segments, in their order. */
  static List<Segment> of(SinkSpec spec, byte[] profile) {
    List<Segment> all = new ArrayList<>();
    all.add(new Segment(APP1, join(EXIF, ExifBlock.of(spec))));
    if (!spec.captions().texts().isEmpty()) {
      all.add(new Segment(APP1, join(XMP, XmpPacket.of(spec.captions()))));
      all.add(new Segment(APP13, resourceBlock(IimRecord.of(spec.captions()))));
    }
    int parts = (profile.length + PROFILE_PART - 1) / PROFILE_PART;
    for (int i = 0; i < parts; i++) {
      all.add(new Segment(APP2, profilePart(profile, i, parts)));
    }
    return all;
  }

  /**
   * Why a JPEG cannot hold these captions, or null if it can. XMP has every text whole and marks
   * each with more bytes than the others do, so where it fits all fit.
   */
  static @Nullable String refusal(Captions captions) {
    int bytes = XmpPacket.of(captions).length;
    CaptionField longest = captions.longest();
    return longest == null || bytes <= XMP_PART
        ? null
        : String.format(
            Locale.ROOT,
            "the metadata takes %d bytes and a JPEG holds %d; shorten the %s.",
            bytes,
            XMP_PART,
            longest.word());
  }

  /** Bytes of all data, with room for what making them takes. */
  static long bytes(Captions captions, byte[] profile) {
    return 4L * (XmpPacket.of(captions).length + profile.length) + 4096;
  }

  /** Length in four bytes, the data, and a byte more where the length is odd. */
  private static byte[] resourceBlock(byte[] iim) {
    Growing out = new Growing(iim.length + 64);
    out.add(RESOURCES, 0, RESOURCES.length);
    out.add(IIM_BLOCK, 0, IIM_BLOCK.length);
    for (int shift = 24; shift >= 0; shift -= 8) {
      out.add(iim.length >> shift);
    }
    out.add(iim, 0, iim.length);
    if ((iim.length & 1) == 1) {
      out.add(0);
    }
    return out.toBytes();
  }

  private static byte[] profilePart(byte[] profile, int i, int parts) {
    int from = i * PROFILE_PART;
    Growing out = new Growing(PROFILE_PART + PROFILE.length + 2);
    out.add(PROFILE, 0, PROFILE.length);
    out.add(i + 1);
    out.add(parts);
    out.add(profile, from, Math.min(PROFILE_PART, profile.length - from));
    return out.toBytes();
  }

  private static byte[] join(byte[] a, byte[] b) {
    Growing out = new Growing(a.length + b.length);
    out.add(a, 0, a.length);
    out.add(b, 0, b.length);
    return out.toBytes();
  }

  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
