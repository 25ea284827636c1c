package org.duskply.recipe;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.jspecify.annotations.Nullable;

/**
 * One exposure from the tripod.
 *
 * @param file path of the frame's file, relative to the recipe's folder
 * @param exposure change of exposure on loading, in stops
 * @param match the frame whose exposure it is brought to; absent: it keeps its own
 * @param gel a gel before the light, applied last; absent: none
 * @param profile colour space to assume in place of what the file says; absent: the file's own
 * @param readsAs what the file's numbers are, whatever it says; absent: what it says
 * @param coverage what becomes of the file's transparency
 * @param extensions the user's own {@code x-} keys
 */
public record Frame(
    String file,
    double exposure,
    @Nullable Match match,
    @Nullable Gel gel,
    @Nullable NamedSpace profile,
    @Nullable ReadsAs readsAs,
    Coverage coverage,
    Map<String, Object> extensions) {
  /** How a recipe writes it. */
  public static final Shape<Frame> SHAPE =
      Shape.mapping(
              Frame.class,
              "frame",
              "One exposure from the tripod: a developed picture file.",
              Field.of("file", new Kind.File(true, FilePaths::frame))
                  .principal()
                  .says("The file, by its path from the recipe's folder, with / between folders.")
                  .example("frames/bh-0007.tif"),
              Field.number("exposure")
                  .from(-20)
                  .to(20)
                  .in(Unit.STOPS)
                  .byDefault(0.0)
                  .says("Change of exposure on loading.")
                  .example("0.4"),
              Field.of("match", new Kind.Nested(() -> Match.SHAPE))
                  .optional("its own exposure")
                  .says("Brings the frame to the exposure of another.")
                  .example("{ frame: dusk, by: exif }"),
              Field.of("gel", new Kind.Nested(() -> Gel.SHAPE))
                  .optional("no gel")
                  .says("A gel before all of the frame's light, after its exposure.")
                  .example("42"),
              Field.word("profile", NamedSpace.values())
                  .optional("what the file itself says")
                  .says("The colour space to assume in place of what the file says.")
                  .example("a98-rgb"),
              Field.word("readsAs", ReadsAs.values())
                  .optional("what the file itself says")
                  .says("Whether the file's numbers are linear light or encoded for the screen.")
                  .example("linear"),
              Field.word("coverage", Coverage.values())
                  .byDefault(Coverage.USE)
                  .says("Whether the file's transparency counts; ignore makes it opaque.")
                  .example("ignore"),
              Field.extensions())
          .reserves("place", "lens")
          .example("late-sky: { file: frames/bh-0019.tif, exposure: 0.4 }");

  /** Copies the map. */
  public Frame {
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  /** A frame as its file has it. */
  public static Frame of(String file) {
    return new Frame(file, 0, null, null, null, null, Coverage.USE, Map.of());
  }

  /** A frame that others are matched to may not be matched itself: no chain, hence no ring. */
  public static List<Fault> chains(Map<String, Object> frames) {
    List<Fault> faults = new ArrayList<>();
    frames.forEach(
        (name, frame) -> {
          Match match = ((Frame) frame).match();
          if (match == null) {
            return;
          }
          Match next = frames.get(match.frame()) instanceof Frame to ? to.match() : null;
          boolean told = faults.stream().anyMatch(f -> f.at().equals(at(match.frame())));
          if (next != null && !(told && next.frame().equals(name))) {
            faults.add(chain(name, match.frame(), next.frame()));
          }
        });
    return faults;
  }

  private static String at(String name) {
    return name + "/match/frame";
  }

  private static Fault chain(String name, String to, String next) {
    String sentence =
        to.equals(name)
            ? "`" + name + "` cannot be matched to itself; name another frame"
            : next.equals(name)
                ? String.format("`%s` and `%s` are matched to each other; keep one", name, to)
                : String.format(
                    "`%s` is matched to `%s`, which is itself matched to `%s`; match both to `%s`",
                    name, to, next, next);
    return new Fault(at(name), sentence, to, "a frame that is not matched itself");
  }
}
