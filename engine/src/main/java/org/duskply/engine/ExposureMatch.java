package org.duskply.engine;

import java.util.List;
import org.duskply.engine.measure.CameraExposure;
import org.duskply.engine.measure.SixDigits;
import org.duskply.recipe.Frame;
import org.jspecify.annotations.Nullable;

/**
 * The change of exposure that a recipe asks of a frame, its {@code match} included: what the
 * camera's settings for the other frame let in more, plus what that frame is itself read brighter
 * by, plus the frame's own {@code exposure}. The sum is rounded to six digits; written into the
 * recipe in place of the match, it gives the same picture.
 */
final class ExposureMatch {
  /** Most that a frame may be read brighter or darker: what {@code exposure} can say. */
  private static final double MOST_STOPS = 20;

  private ExposureMatch() {}

  /**
   * The stops that {@code one} is read brighter by.
   *
   * @param reference the frame that it is matched to; null if it could not be opened, which has
   *     been told
   */
  static double stops(FrameSet.Opened one, FrameSet.@Nullable Opened reference, Found found) {
    Frame frame = one.frame();
    if (frame.match() == null || reference == null) {
      return frame.exposure();
    }
    String path = "frames/" + one.name() + "/match";
    CameraExposure own = CameraExposure.of(one.exif());
    CameraExposure other = CameraExposure.of(reference.exif());
    if (own == null || other == null) {
      tellMissing(one, path, found);
      if (reference.source() != one.source()) {
        tellMissing(reference, path, found);
      }
      return 0;
    }
    double stops = other.stopsAbove(own) + reference.frame().exposure() + frame.exposure();
    if (!(Math.abs(stops) <= MOST_STOPS)) {
      found.problem(
          path,
          "By the camera's settings "
              + one.name()
              + " would be read more than 20 stops brighter or darker to match "
              + reference.name()
              + "; say its exposure in stops instead.");
      return 0;
    }
    return SixDigits.round(stops);
  }

  private static void tellMissing(FrameSet.Opened frame, String path, Found found) {
    List<String> missing = CameraExposure.missing(frame.exif());
    if (!missing.isEmpty()) {
      found.problem(
          path,
          frame.frame().file()
              + " does not say with which "
              + listed(missing)
              + " it was taken, so that exposures cannot be matched; say the exposure in stops instead.");
    }
  }

  /** Words as a sentence lists them. */
  private static String listed(List<String> words) {
    int last = words.size() - 1;
    return last == 0
        ? words.get(0)
        : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
  }
}
