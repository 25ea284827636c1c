package org.duskply.recipe;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
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
 * @param profile colour space to assume in place of what the file says; absent: the file's own
 * @param extensions the user's own {@code x-} keys
 */
public record Frame(
    String file, double exposure, @Nullable NamedSpace profile, Map<String, Object> extensions) {
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
              Field.word("profile", NamedSpace.values())
                  .optional("what the file itself says")
                  .says("The colour space to assume in place of what the file says.")
                  .example("a98-rgb"),
              Field.extensions())
          .example("late-sky: { file: frames/bh-0019.tif, exposure: 0.4 }");

  /** Copies the map. */
  public Frame {
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }
}
