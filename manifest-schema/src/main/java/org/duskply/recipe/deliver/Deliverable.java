package org.duskply.recipe.deliver;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.FilePaths;
import org.duskply.recipe.Limits;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Size;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
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
 * @param longEdge longest side in pixels; absent: the picture's own size, or {@code size}
 * @param size exact size in pixels; a picture of another shape is first cropped about its centre to
 *     this one; absent: the picture's own size, or {@code longEdge}
 * @param density dots an inch that the file names for print; changes no pixel
 * @param dither whether 8-bit samples are dithered, so that skies show no bands
 * @param alternates the alternates to deliver, each in a file of its own; {@link
 *     org.duskply.recipe.Alternate#MAIN} is the recipe as it stands
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
    @Nullable Size size,
    int density,
    boolean dither,
    List<String> alternates,
    Map<String, Object> extensions) {
  private static final int JPEG_SIDE = 65_535;
  // What a JPEG's head has place for.
  private static final int DENSITY = 65_535;

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
              Field.of("size", new Kind.Nested(() -> Size.SHAPE))
                  .optional("the picture's own size")
                  .says(
                      "Exact size of the file; a picture of another shape is first cropped about"
                          + " its centre to this one.")
                  .example("[1080, 1350]"),
              Field.whole("density", 1, DENSITY)
                  .in(Unit.DOTS_PER_INCH)
                  .byDefault(300)
                  .says("Print resolution that the file names; no pixel changes.")
                  .example("240"),
              Field.of("dither", new Kind.Flag())
                  .byDefault(
                      "true in a TIFF or a PNG of 8 bits, false in a JPEG",
                      Deliverable::usualDither)
                  .says(
                      "Spreads the rounding to 8 bits over neighbouring pixels, so that a smooth"
                          + " sky shows no bands.")
                  .example("true"),
              Field.of(
                      "alternates",
                      new Kind.Items(
                          new Kind.Mention(NameList.ALTERNATES), "alternate", 1, Limits.MEMBERS))
                  .byDefault(List.of(NameList.MAIN))
                  .says(
                      "The alternates to deliver, each in a file of its own; main is the recipe as"
                          + " it stands.")
                  .example("[main, no-fire]"),
              Field.extensions())
          .rules(
              new Rule(List.of("depth", "format"), Deliverable::depthFaults),
              new Rule(List.of("longEdge", "size"), Deliverable::twoSizes),
              new Rule(List.of("longEdge", "size", "format"), Deliverable::sizeFaults),
              new Rule(List.of("alternates"), Deliverable::repeated),
              new Rule(List.of("alternates", "file"), Deliverable::oneFile),
              new Rule(List.of("format"), Deliverable::idleFaults))
          .reserves("sharpen")
          .example("print: { file: out/<title>.tif, depth: 16, profile: a98-rgb }");

  /** Copies list and map. */
  public Deliverable {
    alternates = List.copyOf(alternates);
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  /** No two may write one file; capital letters make no difference on some systems. */
  public static List<Fault> sameFiles(Map<String, Object> deliverables) {
    List<Fault> faults = new ArrayList<>();
    Map<String, String> writers = new HashMap<>();
    deliverables.forEach(
        (name, deliverable) -> {
          for (String file : ((Deliverable) deliverable).distinctFiles(name)) {
            String first = writers.putIfAbsent(file, name);
            if (first != null) {
              faults.add(sameFile(first, name, file));
              return;
            }
          }
        });
    return faults;
  }

  private static Fault sameFile(String first, String name, String file) {
    String sentence =
        String.format(
            "`%s` and `%s` write the same file; give them different paths, or put <deliverable>"
                + " into the path",
            first, name);
    return new Fault(name + "/file", sentence, file, "a path of its own");
  }

  /** The paths with what sets deliverables apart filled in, one for each alternate. */
  private Set<String> distinctFiles(String name) {
    String extent =
        longEdge != null
            ? longEdge.toString()
            : size != null ? size.width() + " × " + size.height() : "full";
    String path =
        file.replace("<deliverable>", name)
            .replace("<width>", "<width " + extent + ">")
            .replace("<height>", "<height " + extent + ">");
    Set<String> files = new LinkedHashSet<>();
    alternates.forEach(a -> files.add(path.replace("<alternate>", a).toLowerCase(Locale.ROOT)));
    return files;
  }

  private static Object usualDepth(Values values) {
    return values.has("format") && values.get("format", Format.class) == Format.TIFF ? 16 : 8;
  }

  private static Object usualDither(Values values) {
    boolean jpeg = values.has("format") && values.get("format", Format.class) == Format.JPEG;
    return !jpeg && values.has("depth") && values.get("depth", Integer.class) == 8;
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
    if (values.written("dither")
        && values.has("depth")
        && values.get("depth", Integer.class) == 16) {
      faults.add(idle("dither", "a file of 8 bits", "one of 16"));
    }
    return faults;
  }

  private static Fault idle(String key, String owner, Format format) {
    return idle(key, owner, "a " + format);
  }

  private static Fault idle(String key, String owner, String file) {
    String sentence =
        String.format("`%s` belongs to %s, but this file is %s; delete it", key, owner, file);
    return new Fault(key, sentence, key, "no " + key);
  }

  private static List<Fault> twoSizes(Values values) {
    return values.get("longEdge") == null || values.get("size") == null
        ? List.of()
        : List.of(
            new Fault(
                "size",
                "`size` and `long-edge` both say how large the file is; keep one",
                "both",
                "one of them"));
  }

  private static List<Fault> sizeFaults(Values values) {
    Integer edge = (Integer) values.get("longEdge");
    Size size = (Size) values.get("size");
    int most =
        Math.max(edge == null ? 0 : edge, size == null ? 0 : Math.max(size.width(), size.height()));
    return most > JPEG_SIDE && values.get("format", Format.class) == Format.JPEG
        ? List.of(
            new Fault(
                edge != null ? "long-edge" : "size",
                "a JPEG is at most " + JPEG_SIDE + " px wide or high; choose .tif or .png",
                "" + most,
                "at most " + JPEG_SIDE))
        : List.of();
  }

  private static List<Fault> repeated(Values values) {
    List<Fault> faults = new ArrayList<>();
    List<?> alternates = values.get("alternates", List.class);
    Set<Object> known = new HashSet<>();
    for (int i = 0; i < alternates.size(); i++) {
      if (!known.add(alternates.get(i))) {
        String sentence = "`" + alternates.get(i) + "` stands in this list twice; keep one";
        String found = "" + alternates.get(i);
        faults.add(new Fault("alternates/#" + (i + 1), sentence, found, "each alternate once"));
      }
    }
    return faults;
  }

  private static List<Fault> oneFile(Values values) {
    String file = values.get("file", String.class);
    long different = values.get("alternates", List.class).stream().distinct().count();
    return different < 2 || file.contains("<alternate>")
        ? List.of()
        : List.of(
            new Fault(
                "file",
                "all alternates of this deliverable would write one file; put <alternate> into the"
                    + " path",
                file,
                "a path with <alternate> in it"));
  }
}
