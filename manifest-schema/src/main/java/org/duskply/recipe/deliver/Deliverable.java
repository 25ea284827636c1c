package org.duskply.recipe.deliver;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.duskply.recipe.FilePaths;
import org.duskply.recipe.Limits;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * One finished file.
 *
 * @param file path relative to the output folder, with placeholders; its ending gives the format
 * @param format what is written
 * @param depth bits a sample, 8 or 16
 * @param profile colour space of the file
 * @param compress how a TIFF is packed
 * @param quality of a JPEG, 0 to 1
 * @param longEdge longest side in pixels; absent: the picture's own size
 * @param extensions the user's own {@code x-} keys
 */
public record Deliverable(
    String file,
    Format format,
    int depth,
    NamedSpace profile,
    Compress compress,
    double quality,
    @Nullable Integer longEdge,
    Map<String, Object> extensions) {
  private static final int JPEG_SIDE = 65_535;

  /** How a recipe writes it. */
  public static final Shape<Deliverable> SHAPE =
      Shape.mapping(
              Deliverable.class,
              "deliverable",
              "One finished file.",
              Field.of("file", new Kind.File(false, FilePaths::output))
                  .principal()
                  .says(
                      "Where it goes, from the output folder; .tif, .png or .jpg says what it is."
                          + " Placeholders: "
                          + String.join(" ", FilePaths.PLACEHOLDERS)
                          + ".")
                  .example("out/<title>-<width>.jpg"),
              Field.derived(
                  "format",
                  List.of("file"),
                  values -> Format.ofFile(values.get("file", String.class)).orElseThrow()),
              Field.whole("depth", 8, 16)
                  .every(8)
                  .in(Unit.BITS)
                  .byDefault("16 in a TIFF, 8 in a PNG or a JPEG", Deliverable::usualDepth)
                  .says("Bits a sample: 8 or 16.")
                  .example("16"),
              Field.word("profile", NamedSpace.values())
                  .byDefault(NamedSpace.SRGB)
                  .says("Colour space of the file.")
                  .example("a98-rgb"),
              Field.word("compress", Compress.values())
                  .byDefault(Compress.DEFLATE)
                  .says("How a TIFF is packed; nothing is lost either way.")
                  .example("none"),
              Field.number("quality")
                  .from(0)
                  .to(1)
                  .byDefault(0.92)
                  .says("Quality of a JPEG.")
                  .example("0.92"),
              Field.whole("longEdge", 1, Limits.SIDE)
                  .in(Unit.PIXELS)
                  .optional("the picture's own size")
                  .says("Longest side of the file.")
                  .example("2048"),
              Field.extensions())
          .rules(
              new Rule(List.of("depth", "format"), Deliverable::depthFaults),
              new Rule(List.of("longEdge", "format"), Deliverable::sizeFaults),
              new Rule(List.of("format"), Deliverable::idleFaults))
          .example("print: { file: out/<title>.tif, depth: 16, profile: a98-rgb }");

  /** Copies the map. */
  public Deliverable {
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  /** No two may write one file; capital letters make no difference on some systems. */
  public static List<Fault> sameFiles(Map<String, Object> deliverables) {
    List<Fault> faults = new ArrayList<>();
    Map<String, String> writers = new HashMap<>();
    deliverables.forEach(
        (name, deliverable) -> {
          String file = ((Deliverable) deliverable).distinctFile(name);
          String first = writers.putIfAbsent(file, name);
          if (first != null) {
            String sentence =
                String.format(
                    "`%s` and `%s` write the same file; give them different paths, or put"
                        + " <deliverable> into the path",
                    first, name);
            faults.add(new Fault(name + "/file", sentence, file, "a path of its own"));
          }
        });
    return faults;
  }

  /** The path with what sets deliverables apart filled in. */
  private String distinctFile(String name) {
    String size = longEdge == null ? "full" : longEdge.toString();
    return file.replace("<deliverable>", name)
        .replace("<width>", "<width " + size + ">")
        .replace("<height>", "<height " + size + ">")
        .toLowerCase(Locale.ROOT);
  }

  private static Object usualDepth(Values values) {
    return values.has("format") && values.get("format", Format.class) == Format.TIFF ? 16 : 8;
  }

  private static List<Fault> depthFaults(Values values) {
    int depth = values.get("depth", Integer.class);
    return depth == 16 && values.get("format", Format.class) == Format.JPEG
        ? List.of(
            new Fault(
                "depth",
                "a JPEG holds 8 bits a sample; write depth: 8, or choose .tif or .png for 16",
                "16",
                "8"))
        : List.of();
  }

  /** Keys that would change nothing in a file of this format. */
  private static List<Fault> idleFaults(Values values) {
    Format format = values.get("format", Format.class);
    List<Fault> faults = new ArrayList<>();
    if (values.written("quality") && format != Format.JPEG) {
      faults.add(idle("quality", "a JPEG", format));
    }
    if (values.written("compress") && format != Format.TIFF) {
      faults.add(idle("compress", "a TIFF", format));
    }
    return faults;
  }

  private static Fault idle(String key, String owner, Format format) {
    String sentence =
        String.format("`%s` belongs to %s, but this file is a %s; delete it", key, owner, format);
    return new Fault(key, sentence, key, "no " + key);
  }

  private static List<Fault> sizeFaults(Values values) {
    Integer edge = (Integer) values.get("longEdge");
    return edge != null && edge > JPEG_SIDE && values.get("format", Format.class) == Format.JPEG
        ? List.of(
            new Fault(
                "long-edge",
                "a JPEG is at most " + JPEG_SIDE + " px wide or high; choose .tif or .png",
                "" + edge,
                "at most " + JPEG_SIDE))
        : List.of();
  }
}
