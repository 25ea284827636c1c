package org.duskply.engine.frame;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * The camera's record of an exposure, as far as it is there.
 *
 * @param taken when, by the camera's clock (DateTimeOriginal, else DateTimeDigitized, else
 *     DateTime)
 * @param exposureSeconds shutter time in seconds
 * @param fNumber aperture
 * @param iso sensitivity
 * @param camera model, as the file says
 */
public record Exif(
    @Nullable LocalDateTime taken,
    @Nullable Double exposureSeconds,
    @Nullable Double fNumber,
    @Nullable Integer iso,
    @Nullable String camera) {
  /** A file without a record. */
  public static final Exif NONE = new Exif(null, null, null, null, null);
}
