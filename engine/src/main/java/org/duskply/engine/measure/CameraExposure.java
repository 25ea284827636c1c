package org.duskply.engine.measure;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.Exif;
import org.jspecify.annotations.Nullable;

/**
 * How a camera was set for one frame, as far as it decides how bright the frame becomes. Under the
 * same light the sensor's signal is proportional to
 *
 * <pre>
 *   t · S / N²        t seconds, S the ISO sensitivity, N the f-number
 * </pre>
 *
 * which is the exposure equation of APEX (ASA PH2.5-1960) and ISO 2720:1974, {@code N²/t = L·S/K},
 * solved for the settings. Marked values are rounded (f/5.6 stands for 5.657, 1/125 often for
 * 1/128): up to 0.035 stop a setting.
 *
 * @param seconds shutter time
 * @param fNumber aperture
 * @param iso sensitivity
 */
public record CameraExposure(double seconds, double fNumber, double iso) {
  private static final double LN2 = StrictMath.log(2);

  /** The settings of a frame's record, or null if one of them is missing. */
  public static @Nullable CameraExposure of(Exif exif) {
    Double seconds = exif.exposureSeconds();
    Double fNumber = exif.fNumber();
    Integer iso = exif.iso();
    return seconds == null || fNumber == null || iso == null
        ? null
        : new CameraExposure(seconds, fNumber, iso);
  }

  /** What a record lacks, in words: shutter time, f-number, ISO. */
  public static List<String> missing(Exif exif) {
    List<String> missing = new ArrayList<>();
    if (exif.exposureSeconds() == null) {
      missing.add("shutter time");
    }
    if (exif.fNumber() == null) {
      missing.add("f-number");
    }
    if (exif.iso() == null) {
      missing.add("ISO");
    }
    return missing;
  }

  /**
   * How many stops brighter these settings make a frame than {@code other} under the same light.
   */
  public double stopsAbove(CameraExposure other) {
    return log2(seconds / other.seconds)
        + 2 * log2(other.fNumber / fNumber)
        + log2(iso / other.iso);
  }

  private static double log2(double x) {
    return StrictMath.log(x) / LN2;
  }
}
