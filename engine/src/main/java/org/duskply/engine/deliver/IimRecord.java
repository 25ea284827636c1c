package org.duskply.engine.deliver;

import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Captions as IPTC-IIM 4.2 has them: datasets of a marker 1C, record, number, two bytes of length
 * and the value. Text is UTF-8, which dataset 1:90 announces by its escape sequence (ISO 2022).
 *
 * <p>A value longer than the standard allows is cut, never inside a character or before a mark that
 * belongs to it; XMP holds it whole. The hour of the capture is left out, for its dataset asks for
 * a time zone that cameras do not tell.
 */
final class IimRecord {
  private static final int MARKER = 0x1C;
  private static final byte[] UTF_8_FOLLOWS = {0x1B, '%', 'G'};
  private static final byte[] VERSION = {0, 4};
  private static final int DATE_CREATED = 55;
  private static final int ZERO_WIDTH_JOINER = 0x200D;
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);

  private final Growing out = new Growing(256);

  private IimRecord() {}

  /** The datasets. */
  static byte[] of(Captions captions) {
    IimRecord record = new IimRecord();
    record.add(1, 90, UTF_8_FOLLOWS);
    record.add(2, 0, VERSION);
    if (captions.taken() != null) {
      record.add(
          2, DATE_CREATED, DATE.format(captions.taken()).getBytes(StandardCharsets.US_ASCII));
    }
    for (CaptionField field : CaptionField.values()) {
      if (field.iim() > 0) {
        for (String value : captions.values(field)) {
          record.add(2, field.iim(), cut(value, field.iimBytes()));
        }
      }
    }
    return record.out.toBytes();
  }

  private void add(int record, int dataset, byte[] value) {
    out.add(MARKER);
    out.add(record);
    out.add(dataset);
    out.add(value.length >> 8);
    out.add(value.length);
    out.add(value, 0, value.length);
  }

  /**
   * The longest beginning of a text that takes at most so many bytes and ends between characters.
   */
  static byte[] cut(String text, int most) {
    int end = 0;
    int bytes = 0;
    int between = 0;
    while (end < text.length()) {
      int c = text.codePointAt(end);
      if (end > 0 && !joins(text.codePointBefore(end), c)) {
        between = end;
      }
      bytes += c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
      if (bytes > most) {
        return text.substring(0, between).getBytes(StandardCharsets.UTF_8);
      }
      end += Character.charCount(c);
    }
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Whether the second belongs to the character that the first is of. */
  private static boolean joins(int first, int second) {
    int type = Character.getType(second);
    return type == Character.NON_SPACING_MARK
        || type == Character.ENCLOSING_MARK
        || type == Character.COMBINING_SPACING_MARK
        || second == ZERO_WIDTH_JOINER
        || first == ZERO_WIDTH_JOINER
        || (second >= 0x1F3FB && second <= 0x1F3FF); // tones of skin
  }
}
