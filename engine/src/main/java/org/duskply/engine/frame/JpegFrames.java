package org.duskply.engine.frame;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.engine.pixel.Region;

/** Opens JPEG files. */
final class JpegFrames {
  private JpegFrames() {}

  /** Whether these first bytes are those of a JPEG file. */
  static boolean starts(byte[] head) {
    return head.length >= 2 && (head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xd8;
  }

  static FrameSource open(FrameFile file) {
    JpegSegments segments = JpegSegments.read(file);
    FrameLimits.check(file, segments.width(), segments.height());
    checkKind(file, segments);
    List<String> notices = new ArrayList<>();
    ExifReader exif = new ExifReader(notices);
    byte[] record = segments.exif();
    if (record != null) {
      exif.block(record, ExifReader.startInSegment(record), file);
    }
    Turn turn = Turn.of(exif.orientation(), segments.width(), segments.height());
    boolean bytes = segments.precision() <= 8;
    FrameInfo info =
        new FrameInfo(
            turn.width(),
            turn.height(),
            segments.components(),
            Alpha.NONE,
            bytes ? Samples.Kind.BYTES : Samples.Kind.SHORTS,
            (1 << segments.precision()) - 1,
            segments.profile(notices),
            null,
            exif.exif(),
            List.copyOf(notices));
    String turned = exif.orientation() == 1 ? "" : " and turned upright";
    return new WholeFrame(
        file,
        info,
        turn,
        "JPEG: decoded once"
            + turned
            + ", from its top down to the last row needed, since it can be entered only at its start; how it is decoded is Java's own, and may differ"
            + " from one Java to another",
        part -> decoderBytes(segments, part),
        new JpegDecoder(segments));
  }

  private static void checkKind(FrameFile file, JpegSegments s) {
    if (s.components() != 1 && s.components() != 3 && s.components() != 4) {
      throw file.fail("is a JPEG of " + s.components() + " colour components; 1, 3 or 4 are read");
    }
    boolean readable =
        s.lossless()
            ? !s.luma() && s.components() < 4 && (s.precision() == 8 || s.precision() == 16)
            : s.precision() == 8;
    if (!readable) {
      throw file.fail(
          "is a "
              + s.precision()
              + "-bit "
              + (s.lossless() ? "lossless " : "")
              + "JPEG of a kind that is not read; save it as TIFF");
    }
  }

  /** The raster, a group of rows in hand, and all coefficients of a file in several scans. */
  private static long decoderBytes(JpegSegments s, Region part) {
    long pixels = (long) s.width() * s.height();
    return (s.lossless() ? pixels : part.count()) * s.components() * ((s.precision() + 7) / 8)
        + FrameLimits.MAX_UNIT_BYTES
        + (s.gathered() ? 2 * pixels * s.components() : 0);
  }
}
