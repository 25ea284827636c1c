package org.duskply.engine;

import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.jspecify.annotations.Nullable;

/** A frame in words: size, depth, colour space and why, and how the camera was set. */
final class FrameWords {
  private FrameWords() {}

  static String description(FrameSet.Opened frame) {
    FrameInfo info = frame.source().info();
    return info.width()
        + " × "
        + info.height()
        + " pixels, "
        + depth(info)
        + ", "
        + frame.colour().space().name()
        + settings(info.exif())
        + brighter(frame.frame().exposure())
        + ". "
        + frame.colour().reason();
  }

  private static String depth(FrameInfo info) {
    String depth =
        switch (info.kind()) {
          case BYTES -> "8 bits";
          case SHORTS -> "16 bits";
          case FLOATS -> "floats";
        };
    return depth
        + (info.channels() < 3 ? " grey" : "")
        + (info.alpha() == FrameInfo.Alpha.NONE ? "" : " with transparency");
  }

  private static String settings(Exif exif) {
    StringBuilder words = new StringBuilder();
    if (real(exif.exposureSeconds())) {
      words.append(", ").append(shutter(exif.exposureSeconds()));
    }
    if (real(exif.fNumber())) {
      words.append(", f/").append(NumberWords.rough(exif.fNumber()));
    }
    if (exif.iso() != null) {
      words.append(", ISO ").append(exif.iso());
    }
    if (exif.taken() != null) {
      words.append(", taken ").append(exif.taken().toString().replace('T', ' '));
    }
    return words.toString();
  }

  /** Whether a file's number is one that a camera could mean. */
  private static boolean real(@Nullable Double value) {
    return value != null && value > 0 && value < Float.MAX_VALUE;
  }

  /** Shutter times up to a quarter of a second as cameras show them. */
  private static String shutter(double seconds) {
    return seconds < 0.3
        ? "1/" + Math.round(1 / seconds) + " s"
        : NumberWords.rough(seconds) + " s";
  }

  private static String brighter(double stops) {
    if (stops == 0) {
      return "";
    }
    String word = stops > 0 ? " stops brighter" : " stops darker";
    return ", read " + NumberWords.exact(Math.abs(stops)) + word;
  }
}
