package org.duskply.engine;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
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
   * The steps of a recipe as a view wants them.
   *
   * @throws UnknownNameException if the view names a step that is not there; the sentence gives the
   *     nearest name
   */
  static List<Step> of(Recipe recipe, View view) {
    StepNames names = StepNames.of(recipe);
    return new Selection(
            path(names, view.only()), path(names, view.skip()), path(names, view.until()))
        .select(recipe.steps(), "steps");
  }

  /** The frames that some steps read when they are done. */
  static Set<String> framesOf(List<Step> steps) {
    Set<String> frames = new LinkedHashSet<>();
    for (Step step : steps) {
      if (!step.skip() && step.opacity() > 0) {
        if (step.verb() instanceof Pop pop) {
          frames.add(pop.frame());
        } else if (step.verb() instanceof Lay lay) {
          frames.add(lay.frame());
        } else if (step.verb() instanceof Group group) {
          frames.addAll(framesOf(group.steps()));
        }
      }
    }
    return frames;
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
    Step kept = out ? skipped(step) : step;
    if (step.verb() instanceof Group group) {
      kept = with(kept, new Group(select(group.steps(), path + "/group"), group.treat()));
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

  private static Step skipped(Step s) {
    return new Step(
        s.id(), s.title(), s.notes(), s.mask(), s.opacity(), true, s.verb(), s.extensions());
  }

  private static Step with(Step s, Group group) {
    return new Step(
        s.id(), s.title(), s.notes(), s.mask(), s.opacity(), s.skip(), group, s.extensions());
  }
}
