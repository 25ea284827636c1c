package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.recipe.Match;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Shape;
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
        + depth(frame)
        + ", "
        + frame.colour().space().name()
        + settings(info.exif())
        + brighter(frame)
        + gel(frame.frame().gel())
        + ". "
        + frame.colour().reason();
  }

  private static String depth(FrameSet.Opened frame) {
    FrameInfo info = frame.source().info();
    String depth =
        switch (info.kind()) {
          case BYTES -> "8 bits";
          case SHORTS -> "16 bits";
          case FLOATS -> "floats";
        };
    return depth
        + (info.colours() == 1 ? " grey" : info.colours() == 4 ? " CMYK" : "")
        + transparency(info.alpha() != FrameInfo.Alpha.NONE, frame.covers());
  }

  private static String transparency(boolean there, boolean minded) {
    return there ? " with transparency" + (minded ? "" : " that is left out") : "";
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

  private static String brighter(FrameSet.Opened frame) {
    double stops = frame.stops();
    Match match = frame.frame().match();
    String reason = match == null ? "" : " to match " + match.frame() + " by the camera's settings";
    if (stops == 0) {
      return match == null ? "" : ", read as it is" + reason;
    }
    String word = stops > 0 ? " stops brighter" : " stops darker";
    return ", read " + NumberWords.exact(Math.abs(stops)) + word + reason;
  }

  private static String gel(@Nullable Gel gel) {
    return gel == null || Shape.isIdentityOf(gel) ? "" : ", through a gel: " + shift(gel);
  }

  private static String shift(Gel gel) {
    List<String> words = new ArrayList<>();
    Double mired = gel.mired();
    if (mired != null && mired != 0) {
      words.add(NumberWords.exact(Math.abs(mired)) + " mired " + (mired > 0 ? "warmer" : "cooler"));
    }
    if (gel.from() != null && gel.to() != null && !gel.from().equals(gel.to())) {
      words.add(
          "light of "
              + NumberWords.exact(gel.from())
              + " K becomes "
              + NumberWords.exact(gel.to())
              + " K");
    }
    double green = gel.plusGreen();
    if (green != 0) {
      words.add(
          NumberWords.exact(Math.abs(green)) + (green > 0 ? " towards green" : " towards magenta"));
    }
    return String.join(" and ", words);
  }
}
