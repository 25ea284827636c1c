package org.duskply.engine.frame;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Reads the camera's record (EXIF 2.3). It is a help, never a condition: what is broken in it is
 * left out with a notice, and the pixels are read all the same. Directories are followed by their
 * named links alone, so that there is no ring to be caught in.
 */
final class ExifReader {
  private static final byte[] MARK = {'E', 'x', 'i', 'f', 0, 0};
  private static final int MOST_ISO_OF_ITS_TAG = 65_535;

  /** Largest exponent of a time or an aperture that a camera could mean. */
  private static final double MOST_APEX = 40;

  private Exif exif = Exif.NONE;
  private int orientation = 1;
  private final List<String> notices;

  ExifReader(List<String> notices) {
    this.notices = notices;
  }

  /** What was found. */
  Exif exif() {
    return exif;
  }

  /** How the picture is to be turned, 1 to 8 (EXIF 2.3, tag 274); 1 is as it is stored. */
  int orientation() {
    return orientation;
  }

  /** Takes a block that is a TIFF structure of its own, as PNG files have it, or nothing. */
  void block(byte[] block, int from, ByteSource file) {
    MemoryBytes bytes = new MemoryBytes(block, from, file);
    TiffForm form = TiffForm.of(bytes.head(16));
    TiffDirectory first =
        form == null ? null : tryTo(() -> new TiffDirectory(bytes, form, form.first()));
    if (form == null || first == null) {
      notices.add("The camera record (EXIF) is damaged and was not used.");
      return;
    }
    directory(bytes, form, first);
  }

  /** Where the TIFF structure of a JPEG's segment begins, or −1 if the segment is another. */
  static int startInSegment(byte[] segment) {
    for (int i = 0; i < MARK.length; i++) {
      if (segment.length <= i || segment[i] != MARK[i]) {
        return -1;
      }
    }
    return MARK.length;
  }

  /** Takes the first directory of a file or block. */
  void directory(ByteSource in, TiffForm form, TiffDirectory first) {
    int before = notices.size();
    orientation = orientation(first);
    TiffDirectory camera = first;
    if (first.has(TiffTag.EXIF_IFD)) {
      TiffDirectory found =
          tryTo(() -> new TiffDirectory(in, form, first.number(TiffTag.EXIF_IFD, 0)));
      if (found == null) {
        notices.add("Part of the camera record (EXIF) is damaged and was not used.");
      } else {
        camera = found;
      }
    }
    exif =
        new Exif(taken(first, camera), seconds(camera), fNumber(camera), iso(camera), model(first));
    if (notices.size() > before + 1) {
      notices.subList(before + 1, notices.size()).clear();
    }
  }

  private int orientation(TiffDirectory first) {
    Long value = tryTo(() -> first.number(TiffTag.ORIENTATION, 1));
    if (value == null || value < 1 || value > 8) {
      notices.add(
          "The file's orientation "
              + (value == null ? "cannot be read" : "is " + value + ", which has no meaning")
              + "; the picture is used as it is stored.");
      return 1;
    }
    return value.intValue();
  }

  private @Nullable LocalDateTime taken(TiffDirectory first, TiffDirectory camera) {
    LocalDateTime original = date(text(camera, TiffTag.DATE_TIME_ORIGINAL));
    LocalDateTime digitized = date(text(camera, TiffTag.DATE_TIME_DIGITIZED));
    LocalDateTime either = original != null ? original : digitized;
    return either != null ? either : date(text(first, TiffTag.DATE_TIME));
  }

  /** {@code 2024:05:31 21:04:09}; blanks and zeros stand for an unknown date. */
  private static @Nullable LocalDateTime date(String text) {
    if (!text.matches("[0-9]{4}:[0-9]{2}:[0-9]{2} [0-9]{2}:[0-9]{2}:[0-9]{2}")) {
      return null;
    }
    try {
      return LocalDateTime.of(
          digits(text, 0, 4),
          digits(text, 5, 7),
          digits(text, 8, 10),
          digits(text, 11, 13),
          digits(text, 14, 16),
          digits(text, 17, 19));
    } catch (DateTimeException e) {
      return null;
    }
  }

  private static int digits(String text, int from, int to) {
    return Integer.parseInt(text.substring(from, to));
  }

  private @Nullable Double positive(TiffDirectory d, int tag) {
    Double value = tryTo(() -> d.real(tag));
    return value != null && value > 0 && value < Double.POSITIVE_INFINITY ? value : null;
  }

  /** Shutter time; where it is not written, {@code 2^−Tv} (EXIF 2.3, annex C). */
  private @Nullable Double seconds(TiffDirectory d) {
    Double seconds = positive(d, TiffTag.EXPOSURE_TIME);
    return seconds != null ? seconds : powerOfTwo(d, TiffTag.SHUTTER_SPEED_VALUE, -1);
  }

  /** Aperture; where it is not written, {@code 2^(Av/2)} (EXIF 2.3, annex C). */
  private @Nullable Double fNumber(TiffDirectory d) {
    Double fNumber = positive(d, TiffTag.F_NUMBER);
    return fNumber != null ? fNumber : powerOfTwo(d, TiffTag.APERTURE_VALUE, 0.5);
  }

  private @Nullable Double powerOfTwo(TiffDirectory d, int tag, double factor) {
    Double apex = tryTo(() -> d.real(tag));
    return apex != null && Math.abs(apex) <= MOST_APEX ? StrictMath.pow(2, factor * apex) : null;
  }

  /**
   * The sensitivity; where it is too much for its tag, that of the tag which then takes its place.
   */
  private @Nullable Integer iso(TiffDirectory d) {
    Integer iso = whole(d, TiffTag.ISO);
    if (iso != null && iso < MOST_ISO_OF_ITS_TAG) {
      return iso;
    }
    Integer index = whole(d, TiffTag.RECOMMENDED_EXPOSURE_INDEX);
    Integer more = index != null ? index : whole(d, TiffTag.STANDARD_OUTPUT_SENSITIVITY);
    return more != null ? more : iso;
  }

  private @Nullable Integer whole(TiffDirectory d, int tag) {
    Long value = tryTo(() -> d.number(tag, 0));
    return value != null && value > 0 && value < Integer.MAX_VALUE ? value.intValue() : null;
  }

  /** Maker and model, the maker's name once. */
  private @Nullable String model(TiffDirectory first) {
    String make = text(first, TiffTag.MAKE);
    String model = text(first, TiffTag.MODEL);
    String both = model.startsWith(make) ? model : (make + " " + model).strip();
    return both.isEmpty() ? null : both;
  }

  private String text(TiffDirectory d, int tag) {
    String text = tryTo(() -> d.text(tag));
    return text == null ? "" : text;
  }

  private <T> @Nullable T tryTo(Supplier<T> read) {
    try {
      return read.get();
    } catch (FrameException e) {
      notices.add("Part of the camera record (EXIF) is damaged and was not used.");
      return null;
    }
  }
}
