package org.duskply.recipe;

import java.util.HashMap;
import java.util.LinkedHashSet;
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
import org.jspecify.annotations.Nullable;

/**
 * Looks at masks that ask where steps show: each of these must be done before the step that uses
 * the mask.
 */
final class StepMaskChecks {
  private final Recipe recipe;
  private final StepNames names;
  private final Problems problems;
  private final TreePlaces places;
  private final @Nullable String alternate;
  private final Map<String, Set<String>> askedByMask = new HashMap<>();
  private final Map<String, Integer> begun = new HashMap<>();
  private final Map<String, Integer> done = new HashMap<>();

  private StepMaskChecks(
      Recipe recipe,
      StepNames names,
      Problems problems,
      TreePlaces places,
      @Nullable String alternate) {
    this.recipe = recipe;
    this.names = names;
    this.problems = problems;
    this.places = places;
    this.alternate = alternate;
  }

  /** Looks at a recipe, and where that is sound at its alternates, which may set other masks. */
  static void check(Recipe recipe, StepNames names, Problems problems, TreePlaces places) {
    new StepMaskChecks(recipe, names, problems, places, null).check();
    if (!problems.any()) {
      for (String name : recipe.alternates().keySet()) {
        Recipe changed = Alternates.apply(recipe, name);
        new StepMaskChecks(changed, names, problems, places, name).check();
      }
    }
  }

  private void check() {
    number(recipe.steps(), "steps");
    number(recipe.finish().steps(), "finish/steps");
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
        asked(mask, 0).forEach(step -> step(path, mask, step));
      }
      if (steps.get(i).verb() instanceof Group group) {
        steps(group.steps(), path + "/group");
      }
    }
  }

  private void step(String user, MaskUse mask, String asked) {
    String path = names.path(asked).orElse(null);
    Integer ready = path == null ? null : done.get(path);
    Integer begins = begun.get(user);
    if (path == null || ready == null || begins == null || ready < begins) {
      return;
    }
    String called =
        mask instanceof MaskUse.Named name ? "the mask `" + name.name() + "`" : "this mask";
    String why =
        path.equals(user)
            ? "which is this step itself"
            : user.startsWith(path + "/")
                ? "which is the group that this step is in"
                : path.startsWith(user + "/") ? "which is in this group" : "which comes later";
    String at = alternate == null ? user + "/mask" : "alternates/" + alternate;
    problems.add(
        places.spot(at),
        at,
        called
            + " asks where `"
            + asked
            + "` shows, "
            + why
            + "; a mask can ask for steps that are done before",
        asked,
        "a step that is done before");
  }

  /** Names of the steps that a mask asks for, be it by the masks it is made of. */
  private Set<String> asked(MaskUse use, int depth) {
    if (!(use instanceof MaskUse.Named name)) {
      return asked(((MaskUse.Inline) use).mask(), depth);
    }
    Set<String> known = askedByMask.get(name.name());
    Mask mask = recipe.masks().get(name.name());
    if (known == null && mask != null && depth <= Limits.MASK_DEPTH) { // deeper is a problem itself
      known = asked(mask, depth + 1);
      askedByMask.put(name.name(), known);
    }
    return known == null ? Set.of() : known;
  }

  private Set<String> asked(Mask mask, int depth) {
    Set<String> asked = new LinkedHashSet<>();
    if (mask.kind() instanceof ShownSteps shown) {
      asked.addAll(shown.steps());
    }
    mask.parts().forEach(part -> asked.addAll(asked(part, depth)));
    return asked;
  }
}
