package org.duskply.engine.frame;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Opens frames. A file is what its first bytes say, whatever its name ends in. */
public final class FrameSources {
  private static final int HEAD_BYTES = 16;

  private FrameSources() {}

  /**
   * Opens a frame far enough to know what it holds; no pixel is decoded.
   *
   * @throws FrameException in one sentence naming the file if it is missing, empty, damaged, too
   *     large or of a kind that is not read
   */
  public static FrameSource open(Path file) {
    return open(file, new ReadCounters());
  }

  /** As {@link #open(Path)}; what is read, now and later, is counted in {@code counters}. */
  public static FrameSource open(Path file, ReadCounters counters) {
    return open(file, counters, false);
  }

  /**
   * As {@link #open(Path)}.
   *
   * @param counters counts what is read, now and later
   * @param tolerant whether readers go on where the file is cut short or damaged, with grey in
   *     place of what is missing and a {@linkplain FrameReader#notices notice}, instead of refusing
   *     it
   */
  public static FrameSource open(Path file, ReadCounters counters, boolean tolerant) {
    try (FrameFile in = FrameFile.open(file, counters, tolerant)) {
      byte[] head = in.head(HEAD_BYTES);
      TiffForm form = TiffForm.of(head);
      if (form != null) {
        return TiffFrames.open(in, form);
      }
      if (JpegFrames.starts(head)) {
        return JpegFrames.open(in);
      }
      if (PngFrames.starts(head)) {
        return PngFrames.open(in);
      }
      throw in.fail(refusal(head));
    }
  }

  private static String refusal(byte[] head) {
    String kind = otherKind(head);
    return kind == null
        ? "is not a picture of a kind that is read: TIFF, PNG and JPEG are"
        : "is " + kind + ", which is not read; TIFF, PNG and JPEG are";
  }

  /** Kinds of files that are met in folders of photographs, by their first bytes. */
  private static @Nullable String otherKind(byte[] head) {
    String text = new String(head, StandardCharsets.ISO_8859_1);
    if (text.startsWith("8BPS")) {
      return "a layered document";
    }
    if (text.startsWith("GIF8")) {
      return "a GIF picture";
    }
    if (text.startsWith("BM")) {
      return "a BMP picture";
    }
    if (text.startsWith("RIFF") && text.startsWith("WEBP", 8)) {
      return "a WebP picture";
    }
    if (text.startsWith("#?RADIANCE") || text.startsWith("#?RGBE")) {
      return "a Radiance HDR picture";
    }
    if (text.startsWith("v/1\u0001")) {
      return "an OpenEXR picture";
    }
    if (text.startsWith("ftyp", 4)) {
      return "a HEIF picture, a raw file or a film";
    }
    return text.startsWith("%PDF") ? "a PDF document" : null;
  }
}
