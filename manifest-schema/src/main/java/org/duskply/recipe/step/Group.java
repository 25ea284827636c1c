package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * Steps folded over the picture below and then mixed in as one.
 *
 * @param steps from the first done to the last; at least one
 * @param treat adjustments of the light that the steps add, in order
 */
public record Group(List<Step> steps, List<Adjustment> treat) implements Verb {
  /** How a recipe writes it. */
  public static final Shape<Group> SHAPE =
      Shape.mapping(
              Group.class,
              "group",
              "Steps done one after the other on the picture below, then mixed in as one.",
              Field.list("steps", "step", 1, Limits.MEMBERS, () -> Step.SHAPE)
                  .key("group")
                  .principal()
                  .says("The steps, from the first done to the last.")
                  .example("[{ pop: pop-hull }, { pop: pop-willow }]"),
              Treat.FIELD)
          .identity(Group::idle)
          .example(
              "{ id: flashes, group: [{ pop: pop-hull }, { pop: pop-willow }], opacity: 0.9 }");

  /** A curve that lifts black adds light even where the steps add none. */
  private boolean idle() {
    return steps.stream().allMatch(Shape::isIdentityOf)
        && treat.stream().allMatch(Shape::isIdentityOf);
  }

  /** Copies the lists. */
  public Group {
    steps = List.copyOf(steps);
    treat = List.copyOf(treat);
  }

  /** The same with other steps. */
  public Group withSteps(List<Step> newSteps) {
    return new Group(newSteps, treat);
  }
}
