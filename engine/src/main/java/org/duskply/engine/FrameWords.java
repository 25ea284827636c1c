package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.Samples;
import org.duskply.recipe.Match;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * A frame in whole sentences: what its file holds and how the camera was set; in which colours it
 * is read and why; what is done to its light on the way; what is odd about it.
 */
final class FrameWords {
  private FrameWords() {}

  static String description(FrameSet.Opened frame) {
    List<String> sentences = new ArrayList<>();
    sentences.add(held(frame) + ".");
    String taken = taken(frame.exif());
    if (!taken.isEmpty()) {
      sentences.add(taken);
    }
    sentences.add(frame.colour().reason());
    String read = read(frame);
    if (!read.isEmpty()) {
      sentences.add(read);
    }
    sentences.addAll(frame.source().info().notices());
    String odd = frame.colour().notice();
    if (odd != null && !plain(frame.source().info())) {
      sentences.add(odd);
    }
    return String.join(" ", sentences);
  }

  /** Of a plain file without a profile the reason says all. */
  private static boolean plain(FrameInfo info) {
    return info.profile() == null && info.kind() != Samples.Kind.FLOATS;
  }

  private static String held(FrameSet.Opened frame) {
    FrameInfo info = frame.source().info();
    String depth =
        switch (info.kind()) {
          case BYTES -> "8 bits";
          case SHORTS -> "16 bits";
          case FLOATS -> "floats";
        };
    return "The file "
        + frame.frame().file()
        + " holds "
        + info.width()
        + " × "
        + info.height()
        + " pixels"
        + (info.colours() == 1 ? " of grey" : info.colours() == 4 ? " of CMYK" : "")
        + (info.colours() == 3 ? " of " : " in ")
        + depth
        + transparency(info.alpha() != FrameInfo.Alpha.NONE, frame.covers());
  }

  private static String transparency(boolean there, boolean minded) {
    return there ? ", with transparency that " + (minded ? "is used" : "is ignored") : "";
  }

  /** How the camera was set; empty where the file does not say. */
  private static String taken(Exif exif) {
    double seconds = sensible(exif.exposureSeconds());
    double aperture = sensible(exif.fNumber());
    List<String> at = new ArrayList<>();
    if (aperture > 0) {
      at.add("f/" + NumberWords.rough(aperture));
    }
    if (exif.iso() != null) {
      at.add("ISO " + exif.iso());
    }
    String words =
        (seconds > 0 ? " exposed for " + shutter(seconds) : " taken")
            + (at.isEmpty() ? "" : " at " + ListWords.and(at))
            + (exif.taken() == null ? "" : " on " + exif.taken().toString().replace("T", " at "));
    return words.equals(" taken") ? "" : "It was" + words + ".";
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

  /** What is done to its light while it is read; empty for nothing. */
  private static String read(FrameSet.Opened frame) {
    List<String> done = new ArrayList<>();
    double stops = frame.stops();
    Match match = frame.frame().match();
    String reason = match == null ? "" : " to match " + match.frame() + " by the camera's settings";
    if (stops != 0) {
      String word = stops > 0 ? " brighter" : " darker";
      done.add("It is read " + NumberWords.stops(Math.abs(stops)) + word + reason);
    } else if (match != null) {
      done.add("It is read as bright as it is" + reason);
    }
    Gel gel = frame.frame().gel();
    if (gel != null && !Shape.isIdentityOf(gel)) {
      done.add((done.isEmpty() ? "Its light " : "its light ") + GelWords.verb(gel));
    }
    return done.isEmpty() ? "" : String.join(", and ", done) + ".";
  }
}
