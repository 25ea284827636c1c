package org.duskply.recipe.deliver;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * What delivered files say about themselves. The properties are those of the IPTC Photo Metadata
 * Standard.
 *
 * @param title short name of the picture; absent: the recipe's own title
 * @param creator who made the picture
 * @param copyright the notice: ©, year, owner
 * @param caption what is seen, in sentences
 * @param keywords words to find it by
 * @param credit how it is to be credited where it is printed
 * @param rightsUsage what it may be used for
 * @param location where it was taken
 * @param altText what a screen reader says in its place
 * @param extensions the user's own {@code x-} keys
 */
public record Metadata(
    @Nullable String title,
    @Nullable String creator,
    @Nullable String copyright,
    @Nullable String caption,
    List<String> keywords,
    @Nullable String credit,
    @Nullable String rightsUsage,
    @Nullable String location,
    @Nullable String altText,
    Map<String, Object> extensions) {
  /** Nothing said. */
  public static final Metadata NONE =
      new Metadata(null, null, null, null, List.of(), null, null, null, null, Map.of());

  /** How a recipe writes it. */
  public static final Shape<Metadata> SHAPE =
      Shape.mapping(
              Metadata.class,
              "metadata",
              "What delivered files say about themselves, by the IPTC Photo Metadata Standard.",
              line("title")
                  .optional("the recipe's title")
                  .says("Short name of the picture.")
                  .example("\"Boathouse café at dusk\""),
              line("creator").optional().says("Who made the picture.").example("\"A. Keeper\""),
              line("copyright")
                  .optional()
                  .says("The copyright notice.")
                  .example("\"© 2026 A. Keeper\""),
              prose("caption")
                  .optional()
                  .says("What is seen, in sentences.")
                  .example("\"The café from the pontoon, twenty minutes after sunset.\""),
              Field.of("keywords", new Kind.Items(keyword(), "keyword", 0, Limits.KEYWORDS))
                  .byDefault(List.of())
                  .says("Words to find it by.")
                  .example("[boathouse, dusk, tarn]"),
              line("credit")
                  .optional()
                  .says("How it is to be credited where it is printed.")
                  .example("\"A. Keeper / Tarn Pictures\""),
              prose("rightsUsage")
                  .optional()
                  .says("What it may be used for.")
                  .example("\"Café's own website and menus, two years\""),
              line("location")
                  .optional()
                  .says("Where it was taken.")
                  .example("\"North pontoon, Alder Tarn\""),
              prose("altText")
                  .optional()
                  .says("What a screen reader says in its place.")
                  .example("\"A lit café on stilts over still water under a violet sky.\""),
              Field.extensions())
          .example("metadata: { creator: \"A. Keeper\", keywords: [boathouse, dusk] }");

  /** Copies list and map. */
  public Metadata {
    keywords = List.copyOf(keywords);
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  private static Field line(String component) {
    return Field.text(component, "a text", Limits.TITLE, Metadata::lineFault);
  }

  private static Field prose(String component) {
    return Field.text(component, "a text", Limits.CAPTION, Metadata::proseFault);
  }

  private static Kind keyword() {
    return new Kind.Text("a word", Limits.KEYWORD, Metadata::lineFault);
  }

  private static @Nullable Fault lineFault(String text) {
    boolean broken = text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0;
    return broken
        ? new Fault("", "this text must stand on one line", "a line end", "one line")
        : proseFault(text);
  }

  /** XML 1.0 has no place for other characters, and no reader shows them. */
  private static @Nullable Fault proseFault(String text) {
    if (text.isBlank()) {
      return new Fault(
          "", "this text is empty; write something, or delete the key", "nothing", "a text");
    }
    return text.codePoints().allMatch(Metadata::printable)
        ? null
        : new Fault(
            "", "this text has a control character in it", "a control character", "plain text");
  }

  private static boolean printable(int point) {
    return point == '\n'
        || point == '\r'
        || point == '\t'
        || (!Character.isISOControl(point) && point != 0xfffe && point != 0xffff);
  }
}
