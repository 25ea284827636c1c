package org.duskply.recipe;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.ShownSteps;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.TreePlaces;

/**
 * Looks at masks that ask where steps show: each of these must be done before the step that uses
 * the mask.
 */
final class StepMaskChecks {
  private final Recipe recipe;
  private final StepNames names;
  private final Problems problems;
  private final TreePlaces places;
  private final Map<String, Integer> latestByMask = new HashMap<>();
  private final Map<String, Integer> begun = new HashMap<>();
  private final Map<String, Integer> done = new HashMap<>();

  StepMaskChecks(Recipe recipe, StepNames names, Problems problems, TreePlaces places) {
    this.recipe = recipe;
    this.names = names;
    this.problems = problems;
    this.places = places;
    number(recipe.steps(), "steps");
    number(recipe.finish().steps(), "finish/steps");
  }

  /** Looks at the masks of all steps. */
  void check() {
    steps(recipe.steps(), "steps");
    steps(recipe.finish().steps(), "finish/steps");
  }

  /** Numbers where each step begins and where it is done, a group after its members. */
  private void number(List<Step> steps, String prefix) {
    for (int i = 0; i < steps.size(); i++) {
      String path = prefix + "/#" + (i + 1);
      begun.put(path, begun.size() + done.size());
      if (steps.get(i).verb() instanceof Group group) {
        number(group.steps(), path + "/group");
      }
      done.put(path, begun.size() + done.size());
    }
  }

  private void steps(List<Step> steps, String prefix) {
    for (int i = 0; i < steps.size(); i++) {
      String path = prefix + "/#" + (i + 1);
      MaskUse mask = steps.get(i).mask();
      if (mask != null) {
        check(path, mask, path + "/mask");
      }
      if (steps.get(i).verb() instanceof Group group) {
        steps(group.steps(), path + "/group");
      }
    }
  }

  /**
   * Looks at a mask of one step.
   *
   * @param user path of the step
   * @param at where the mask stands
   */
  void check(String user, MaskUse mask, String at) {
    Integer begins = begun.get(user);
    if (begins == null || latest(mask, 0) < begins) {
      return;
    }
    if (problems.count() > Limits.PROBLEMS) { // only counted: what is asked for is not looked up
      add(mask, "a step", "which is not done before", "", at);
    } else {
      tell(user, mask, mask, at, new HashSet<>(), new HashSet<>());
    }
  }

  /** Which of the steps that a mask asks for is done last; −1 where it asks for none. */
  private int latest(MaskUse use, int depth) {
    if (!(use instanceof MaskUse.Named name)) {
      return latest(((MaskUse.Inline) use).mask(), depth);
    }
    Integer known = latestByMask.get(name.name());
    Mask mask = recipe.masks().get(name.name());
    if (known == null && mask != null && depth <= Limits.MASK_DEPTH) { // deeper is a problem itself
      known = latest(mask, depth + 1);
      latestByMask.put(name.name(), known);
    }
    return known == null ? -1 : known;
  }

  private int latest(Mask mask, int depth) {
    int latest = -1;
    if (mask.kind() instanceof ShownSteps shown) {
      for (String step : shown.steps()) {
        latest = Math.max(latest, ready(step));
      }
    }
    for (MaskUse part : mask.parts()) {
      latest = Math.max(latest, latest(part, depth));
    }
    return latest;
  }

  /** When a step is done; −1 where there is none, which is told elsewhere. */
  private int ready(String step) {
    return names.path(step).map(done::get).orElse(-1);
  }

  /** Tells of each step that comes too late. */
  private void tell(
      String user, MaskUse use, MaskUse part, String at, Set<String> masks, Set<String> told) {
    Mask mask =
        part instanceof MaskUse.Named name
            ? masks.add(name.name()) ? recipe.masks().get(name.name()) : null
            : ((MaskUse.Inline) part).mask();
    if (mask == null) {
      return;
    }
    if (mask.kind() instanceof ShownSteps shown) {
      for (String step : shown.steps()) {
        if (ready(step) >= begun.getOrDefault(user, 0) && told.add(step)) {
          add(use, "`" + step + "`", why(user, names.path(step).orElse("")), step, at);
        }
      }
    }
    mask.parts().forEach(its -> tell(user, use, its, at, masks, told));
  }

  private static String why(String user, String asked) {
    return asked.equals(user)
        ? "which is this step itself"
        : user.startsWith(asked + "/")
            ? "which is the group that this step is in"
            : asked.startsWith(user + "/") ? "which is in this group" : "which comes later";
  }

  private void add(MaskUse mask, String step, String why, String found, String at) {
    String called =
        mask instanceof MaskUse.Named name ? "the mask `" + name.name() + "`" : "this mask";
    problems.add(
        places.spot(at),
        at,
        called
            + " asks where "
            + step
            + " shows, "
            + why
            + "; a mask can ask for steps that are done before",
        found,
        "a step that is done before");
  }
}
