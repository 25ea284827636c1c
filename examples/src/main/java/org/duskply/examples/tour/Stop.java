package org.duskply.examples.tour;

import java.util.List;
import java.util.Map;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Alternates;
import org.duskply.recipe.Finish;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.deliver.Format;
import org.duskply.recipe.deliver.Metadata;
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

  /** The step after which all is lit but for the fire. */
  private static final String LIT = "water";

  /** The alternate that the tour ends with. */
  private static final String OTHER = "no-fire";

  /** The tour of a recipe, from the first picture to the last. */
  static List<Stop> of(Recipe recipe) {
    return List.of(
        unfinished(recipe, "1-base", List.of()),
        unfinished(recipe.withBase(POP), "2-pop", List.of()),
        unfinished(recipe, "3-pops", popsOf(recipe)),
        unfinished(recipe, "4-lit", untilLit(recipe)),
        stop(recipe, "5-finished"),
        stop(Alternates.apply(recipe, OTHER), "6-" + OTHER));
  }

  private static List<Step> popsOf(Recipe recipe) {
    return recipe.steps().stream().filter(Stop::popsOnly).toList();
  }

  private static boolean popsOnly(Step step) {
    return step.verb() instanceof Pop
        || (step.verb() instanceof Group group && group.steps().stream().allMatch(Stop::popsOnly));
  }

  private static List<Step> untilLit(Recipe recipe) {
    List<String> names = recipe.steps().stream().map(step -> "" + step.id()).toList();
    return recipe.steps().subList(0, names.indexOf(LIT) + 1);
  }

  /** Some of the steps, cropped as the finished picture is. */
  private static Stop unfinished(Recipe recipe, String name, List<Step> steps) {
    Finish crop = new Finish(recipe.finish().crop(), List.of());
    return stop(recipe.withSteps(steps).withFinish(crop), name);
  }

  private static Stop stop(Recipe recipe, String name) {
    return new Stop(
        name,
        recipe
            .withAlternates(Map.of())
            .withMetadata(Metadata.NONE)
            .withDeliverables(Map.of(name, picture(name))));
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
