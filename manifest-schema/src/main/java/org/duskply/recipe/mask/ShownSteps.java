package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;

/**
 * Where steps that came before show: the greatest of their masks times their opacity.
 *
 * @param steps names or places of steps, at least one; each is done before the step that uses the
 *     mask
 */
public record ShownSteps(List<String> steps) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<ShownSteps> SHAPE =
      Shape.mapping(
              ShownSteps.class,
              "steps",
              "Where steps that came before show: the greatest of their masks times their opacity;"
                  + " of a group, the greatest of its steps times its own.",
              Field.of(
                      "steps",
                      new Kind.Items(new Kind.Mention(NameList.STEPS), "step", 1, Limits.MEMBERS))
                  .principal()
                  .says("Names of steps, or their places, in quotes: \"#7\".")
                  .example("[flashes]"))
          .example("steps: [flashes]");

  /** Copies the list. */
  public ShownSteps {
    steps = List.copyOf(steps);
  }
}
