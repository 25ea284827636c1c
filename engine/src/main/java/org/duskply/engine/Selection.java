package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.Finish;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/**
 * The steps that a {@link View} leaves of a recipe. Steps that fall out are marked to be skipped,
 * so that all keep their places.
 */
final class Selection {
  private final @Nullable String only;
  private final @Nullable String skip;
  private final @Nullable String until;
  private boolean past;

  private Selection(@Nullable String only, @Nullable String skip, @Nullable String until) {
    this.only = only;
    this.skip = skip;
    this.until = until;
  }

  /**
   * A recipe with its steps, those of the finish included, as a view wants them.
   *
   * @param names what the steps are called: an alternate's are called as in the recipe as it stands
   * @throws UnknownNameException if the view names a step that is not there; the sentence gives the
   *     nearest name
   */
  static Recipe of(Recipe recipe, StepNames names, View view) {
    Selection selection =
        new Selection(
            path(names, view.only()), path(names, view.skip()), path(names, view.until()));
    List<Step> steps = selection.select(recipe.steps(), "steps");
    Finish finish = recipe.finish();
    List<Step> last = selection.select(finish.steps(), "finish/steps");
    return recipe.withSteps(steps).withFinish(new Finish(finish.crop(), last));
  }

  private static @Nullable String path(StepNames names, @Nullable String name) {
    if (name == null) {
      return null;
    }
    return names
        .path(name)
        .orElseThrow(
            () ->
                new UnknownNameException(
                    "The recipe has no step "
                        + name
                        + names.nearest(name).map(n -> "; did you mean " + n + "?").orElse(".")));
  }

  private List<Step> select(List<Step> steps, String prefix) {
    List<Step> selected = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      selected.add(select(steps.get(i), prefix + "/#" + (i + 1)));
    }
    return selected;
  }

  private Step select(Step step, String path) {
    boolean out = past || path.equals(skip) || !wantedByOnly(path);
    Step kept = out ? step.skipped() : step;
    if (step.verb() instanceof Group group) {
      kept = kept.withVerb(group.withSteps(select(group.steps(), path + "/group")));
    }
    past |= path.equals(until);
    return kept;
  }

  private boolean wantedByOnly(String path) {
    return only == null
        || path.equals(only)
        || path.startsWith(only + "/")
        || only.startsWith(path + "/");
  }
}
