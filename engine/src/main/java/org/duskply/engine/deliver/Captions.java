package org.duskply.engine.deliver;

import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.duskply.recipe.deliver.Metadata;
import org.jspecify.annotations.Nullable;

/**
 * What a delivered file says of its picture in words. Line ends are line feeds; no text holds
 * another control character but the tab, and every text can be written in XML and in UTF-8.
 * Immutable.
 *
 * @param software what made the file
 * @param taken when the base frame was taken, by the camera's clock, or absent; to the second
 * @param texts the values of each field that has any, none of them blank
 */
public record Captions(
    String software, @Nullable LocalDateTime taken, Map<CaptionField, List<String>> texts) {
  /** What files say made them; without a version, so that the same pixels are the same file. */
  public static final String SOFTWARE = "Duskply";

  /** A file that says no more than what made it. */
  public static final Captions NONE = new Captions(SOFTWARE, null, Map.of());

  /**
   * What a recipe has files say.
   *
   * @param title of the recipe: stands in for a title of the picture, but only where there are
   *     captions at all, since a working title is nobody else's business
   * @param taken when the base frame was taken, or absent
   * @throws DeliverException if a text holds what no file can hold
   */
  public static Captions of(
      Metadata metadata, @Nullable String title, @Nullable LocalDateTime taken) {
    Captions captions =
        new Captions(SOFTWARE, taken, Map.of())
            .with(CaptionField.TITLE, metadata.title())
            .with(CaptionField.KEYWORDS, metadata.keywords())
            .with(CaptionField.CREATOR, metadata.creator())
            .with(CaptionField.LOCATION, metadata.location())
            .with(CaptionField.CREDIT, metadata.credit())
            .with(CaptionField.COPYRIGHT, metadata.copyright())
            .with(CaptionField.CAPTION, metadata.caption())
            .with(CaptionField.RIGHTS_USAGE, metadata.rightsUsage())
            .with(CaptionField.ALT_TEXT, metadata.altText());
    return captions.texts.isEmpty() || metadata.title() != null
        ? captions
        : captions.with(CaptionField.TITLE, title);
  }

  /**
   * Copies the texts.
   *
   * @throws DeliverException if a text holds what no file can hold
   */
  public Captions {
    Map<CaptionField, List<String>> clean = new EnumMap<>(CaptionField.class);
    texts.forEach((field, values) -> clean.put(field, clean(field, values)));
    clean.values().removeIf(List::isEmpty);
    texts = Collections.unmodifiableMap(clean);
  }

  /**
   * These captions and another; a blank or absent value says nothing.
   *
   * @throws DeliverException if the text holds what no file can hold
   */
  Captions with(CaptionField field, @Nullable String text) {
    return with(field, text == null ? List.of() : List.of(text));
  }

  /** As {@link #with(CaptionField, String)}, for a field of several values. */
  Captions with(CaptionField field, List<String> values) {
    Map<CaptionField, List<String>> more = new EnumMap<>(CaptionField.class);
    more.putAll(texts);
    more.put(field, values);
    return new Captions(software, taken, more);
  }

  /** The values of a field, or an empty list. */
  List<String> values(CaptionField field) {
    return texts.getOrDefault(field, List.of());
  }

  /** The field that takes most bytes; of equals the first. */
  @Nullable CaptionField longest() {
    CaptionField longest = null;
    int most = 0;
    for (Map.Entry<CaptionField, List<String>> e : texts.entrySet()) {
      int bytes = 0;
      for (String value : e.getValue()) {
        bytes += value.getBytes(StandardCharsets.UTF_8).length;
      }
      if (bytes > most) {
        most = bytes;
        longest = e.getKey();
      }
    }
    return longest;
  }

  private static List<String> clean(CaptionField field, List<String> values) {
    List<String> clean = new ArrayList<>();
    for (String value : values) {
      String text = value.replace("\r\n", "\n").replace('\r', '\n');
      text.codePoints().forEach(c -> check(field, c));
      if (!text.isBlank()) {
        clean.add(text);
      }
    }
    return List.copyOf(clean);
  }

  /** XML 1.0 section 2.2, less the control characters of ISO 6429 that it would allow. */
  private static void check(CaptionField field, int c) {
    boolean control = Character.isISOControl(c) && c != '\n' && c != '\t';
    boolean surrogate = c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
    if (control || surrogate || (c & 0xFFFE) == 0xFFFE) {
      throw new DeliverException(
          String.format(
              Locale.ROOT,
              "The %s of the metadata holds U+%04X, a code that is not text and that no file can"
                  + " hold; delete it.",
              field.word(),
              c));
    }
  }
}
