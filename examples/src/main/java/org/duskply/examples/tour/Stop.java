package org.duskply.examples.tour;

import java.util.List;
import java.util.Map;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.deliver.Format;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;

/**
 * One picture of the tour.
 *
 * @param name of its file, without the ending
 * @param recipe makes it; has one deliverable, small enough for a page
 */
record Stop(String name, Recipe recipe) {
  private static final int LONG_EDGE = 900;
  private static final double QUALITY = 0.85;
  private static final int DOTS_PER_INCH = 300;

  /** The pop whose frame shows how such frames look: the assistant stands in it. */
  private static final String POP = "pop-steps";

  /** The tour of a recipe, from the first picture to the last. */
  static List<Stop> of(Recipe recipe) {
    return List.of(
        new Stop("1-base", with(recipe, recipe.base(), List.of(), "1-base")),
        new Stop("2-pop", with(recipe, POP, List.of(), "2-pop")),
        new Stop("3-pops", with(recipe, recipe.base(), popsOf(recipe), "3-pops")),
        new Stop("4-finished", with(recipe, recipe.base(), recipe.steps(), "4-finished")));
  }

  private static List<Step> popsOf(Recipe recipe) {
    return recipe.steps().stream().filter(Stop::popsOnly).toList();
  }

  private static boolean popsOnly(Step step) {
    return step.verb() instanceof Pop
        || (step.verb() instanceof Group group && group.steps().stream().allMatch(Stop::popsOnly));
  }

  private static Recipe with(Recipe r, String base, List<Step> steps, String name) {
    return r.withBase(base).withSteps(steps).withDeliverables(Map.of(name, picture(name)));
  }

  private static Deliverable picture(String name) {
    return new Deliverable(
        name + ".jpg",
        Format.JPEG,
        8,
        NamedSpace.SRGB,
        Compress.DEFLATE,
        QUALITY,
        LONG_EDGE,
        null,
        DOTS_PER_INCH,
        false,
        List.of(Alternate.MAIN),
        Map.of());
  }
}
