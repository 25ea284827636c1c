package org.duskply.engine.frame;

import java.nio.file.Path;

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
    try (FrameFile in = FrameFile.open(file, counters)) {
      byte[] head = in.head(HEAD_BYTES);
      TiffForm form = TiffForm.of(head);
      if (form != null) {
        return TiffFrames.open(in, form);
      }
      throw in.fail(refusal(head));
    }
  }

  private static String refusal(byte[] head) {
    return "is not a picture that can be read";
  }
}
