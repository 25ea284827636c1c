package org.duskply.engine.frame;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.duskply.engine.frame.FrameInfo.Alpha;

/** Opens PNG files. */
final class PngFrames {
  private PngFrames() {}

  /** Whether these first bytes are those of a PNG file. */
  static boolean starts(byte[] head) {
    int count = PngChunks.SIGNATURE.length;
    return head.length >= count && Arrays.equals(head, 0, count, PngChunks.SIGNATURE, 0, count);
  }

  static FrameSource open(FrameFile file) {
    PngChunks chunks = new PngChunks(file);
    if (!chunks.sound()) {
      throw file.fail("is a damaged PNG: its kind of colour and its depth do not go together");
    }
    List<String> notices = new ArrayList<>();
    ExifReader exif = new ExifReader(notices);
    byte[] record = chunks.chunk("eXIf", 1);
    if (record != null) {
      exif.block(record, 0, file);
    }
    PngColour colour = PngColour.of(chunks, notices);
    Turn turn = Turn.of(exif.orientation(), chunks.width(), chunks.height());
    boolean alpha = chunks.storedAlpha() || chunks.transparency();
    int channels = (chunks.colour() ? 3 : 1) + (alpha ? 1 : 0);
    FrameInfo info =
        new FrameInfo(
            turn.width(),
            turn.height(),
            channels,
            alpha ? Alpha.STRAIGHT : Alpha.NONE,
            chunks.bits() == 16 ? Samples.Kind.SHORTS : Samples.Kind.BYTES,
            chunks.palette() ? 255 : (1 << chunks.bits()) - 1,
            colour.profile(),
            colour.named(),
            exif.exif(),
            List.copyOf(notices));
    PngDecoder decoder = new PngDecoder(chunks, channels);
    if (chunks.cut() && !file.tolerant()) {
      refuseMissing(file, chunks);
    }
    String turned = exif.orientation() == 1 ? "" : " and turned upright";
    return new WholeFrame(
        file,
        info,
        turn,
        "PNG: decoded once, whole" + turned + ", since it can be entered only at its start",
        part -> decoderBytes(chunks),
        decoder);
  }

  /** Names the first row that is missing, without room for those that are there. */
  private static void refuseMissing(FrameFile file, PngChunks chunks) {
    long whole = PngRows.whole(file, chunks);
    if (whole < chunks.height()) {
      throw file.fail(
          "is cut short or damaged: it cannot be decoded from row "
              + (chunks.interlaced() ? 0 : whole)
              + " down");
    }
  }

  /** The raster with four bands at most, and a group of rows in hand. */
  private static long decoderBytes(PngChunks chunks) {
    return (long) chunks.width() * chunks.height() * 4 * (chunks.bits() == 16 ? 2 : 1)
        + FrameLimits.MAX_UNIT_BYTES;
  }
}
