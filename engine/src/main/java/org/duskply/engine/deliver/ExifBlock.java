package org.duskply.engine.deliver;

import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Format;

/**
 * What EXIF 2.32 says of a delivered picture: how it lies, its resolution, what made it, its
 * captions, and in the directory of its own when it was taken and its size. Numbers of tags are the
 * standard's.
 *
 * <p>Text is UTF-8 in fields of the type ASCII: common practice, no source, and what readers
 * expect; EXIF 3.0 has a type for it that few know. Of the camera's record the date alone is kept:
 * a composite has no one shutter time.
 */
final class ExifBlock {
  private static final int ORIENTATION = 274;
  private static final int X_RESOLUTION = 282;
  private static final int Y_RESOLUTION = 283;
  private static final int RESOLUTION_UNIT = 296;
  private static final int SOFTWARE = 305;
  private static final int CHROMA_POSITION = 531;
  private static final int EXIF_DIRECTORY = 34665;
  private static final int EXIF_VERSION = 36864;
  private static final int DATE_TIME_ORIGINAL = 36867;
  private static final int COMPONENTS = 37121;
  private static final int FLASHPIX_VERSION = 40960;
  private static final int COLOUR_SPACE = 40961;
  private static final int PIXELS_ACROSS = 40962;
  private static final int PIXELS_DOWN = 40963;

  private static final int INCH = 2;
  private static final int SRGB = 1;
  private static final int NOT_CALIBRATED = 0xFFFF;

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);

  private ExifBlock() {}

  /** The whole block, a TIFF structure without a picture, for a JPEG or a PNG. */
  static byte[] of(SinkSpec spec) {
    TiffDirectory first = new TiffDirectory();
    describe(first, spec);
    if (spec.format() == Format.JPEG) {
      first.shorts(CHROMA_POSITION, 1); // centred: there is a sample of chroma for every pixel
    }
    first.directory(EXIF_DIRECTORY, camera(spec));
    return first.head();
  }

  /** Puts into the first directory what stands there in every format. */
  static void describe(TiffDirectory first, SinkSpec spec) {
    first.shorts(ORIENTATION, 1); // upright
    first.rational(X_RESOLUTION, spec.dotsPerInch());
    first.rational(Y_RESOLUTION, spec.dotsPerInch());
    first.shorts(RESOLUTION_UNIT, INCH);
    first.text(SOFTWARE, spec.captions().software());
    for (CaptionField field : CaptionField.values()) {
      List<String> values = spec.captions().values(field);
      if (field.exifTag() > 0 && !values.isEmpty()) {
        first.text(field.exifTag(), values.get(0));
      }
    }
  }

  /** Puts the directory of EXIF's own into a TIFF, whose tags say all of it but the date. */
  static void date(TiffDirectory first, SinkSpec spec) {
    if (spec.captions().taken() != null) {
      TiffDirectory camera = new TiffDirectory();
      dateAndVersion(camera, spec);
      first.directory(EXIF_DIRECTORY, camera);
    }
  }

  private static TiffDirectory camera(SinkSpec spec) {
    TiffDirectory camera = new TiffDirectory();
    dateAndVersion(camera, spec);
    if (spec.format() == Format.JPEG) {
      camera.undefined(COMPONENTS, new byte[] {1, 2, 3, 0}); // Y, Cb, Cr
    }
    camera.longs(PIXELS_ACROSS, spec.width());
    camera.longs(PIXELS_DOWN, spec.height());
    return camera;
  }

  private static void dateAndVersion(TiffDirectory camera, SinkSpec spec) {
    camera.undefined(EXIF_VERSION, latin("0232"));
    camera.undefined(FLASHPIX_VERSION, latin("0100"));
    camera.shorts(COLOUR_SPACE, spec.profile() == NamedSpace.SRGB ? SRGB : NOT_CALIBRATED);
    if (spec.captions().taken() != null) {
      camera.text(DATE_TIME_ORIGINAL, DATE.format(spec.captions().taken()));
    }
  }

  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
