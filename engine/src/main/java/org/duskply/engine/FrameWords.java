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
        + (info.colours() == 1 ? " grey" : info.colours() == 4 ? " CMYK" : "")
        + (info.alpha() == FrameInfo.Alpha.NONE ? "" : " with transparency");
  }

  private static String settings(Exif exif) {
    StringBuilder words = new StringBuilder();
    double seconds = sensible(exif.exposureSeconds());
    if (seconds > 0) {
      words.append(", ").append(shutter(seconds));
    }
    double aperture = sensible(exif.fNumber());
    if (aperture > 0) {
      words.append(", f/").append(NumberWords.rough(aperture));
    }
    if (exif.iso() != null) {
      words.append(", ISO ").append(exif.iso());
    }
    if (exif.taken() != null) {
      words.append(", taken ").append(exif.taken().toString().replace('T', ' '));
    }
    return words.toString();
  }

  /** A file's number if it is one that a camera could mean, else 0. */
  private static double sensible(@Nullable Double value) {
    return value != null && value > 0 && value < Float.MAX_VALUE ? value : 0;
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
