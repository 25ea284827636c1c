package org.duskply.recipe;

import java.util.List;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/**
 * What is done once the picture is composed: a crop, and steps over the cropped picture. Positions
 * in these steps are those of the picture before the crop, so that another crop moves no mask.
 *
 * @param crop the part that is kept; absent: all
 * @param steps from the first done to the last
 */
public record Finish(@Nullable Crop crop, List<Step> steps) {
  /** Nothing to be done. */
  public static final Finish NONE = new Finish(null, List.of());

  /** How a recipe writes it. */
  public static final Shape<Finish> SHAPE =
      Shape.mapping(
              Finish.class,
              "finish",
              "What is done once the picture is composed.",
              Field.of("crop", new Kind.Nested(() -> Crop.SHAPE))
                  .optional("the whole picture")
                  .says("The part that is kept, in whole pixels of the grid.")
                  .example("{ left: 120, top: 80, width: 5760, height: 3840 }"),
              Field.list("steps", "step", 0, Limits.STEPS, () -> Step.SHAPE)
                  .byDefault(List.of())
                  .says(
                      "Steps over the cropped picture, from the first to the last; positions count"
                          + " from the corner before the crop.")
                  .example("[{ adjust: [{ saturation: 1.1 }] }]"))
          .identity(
              finish ->
                  finish.crop() == null && finish.steps().stream().allMatch(Shape::isIdentityOf))
          .reserves("lens", "plumb", "turn")
          .example("finish: { crop: { left: 120, top: 80, width: 5760, height: 3840 } }");

  /** Copies the list. */
  public Finish {
    steps = List.copyOf(steps);
  }
}
