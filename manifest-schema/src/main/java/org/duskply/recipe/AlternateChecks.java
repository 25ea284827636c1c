package org.duskply.recipe;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.Spot;
import org.duskply.recipe.text.TreePlaces;

/**
 * Looks at what alternates make of the steps of a sound recipe, as the recipe's own steps are
 * looked at, and at what they say of one step twice or in vain.
 */
final class AlternateChecks {
  private final Recipe recipe;
  private final StepNames names;
  private final Problems problems;
  private final TreePlaces places;

  AlternateChecks(Recipe recipe, StepNames names, Problems problems, TreePlaces places) {
    this.recipe = recipe;
    this.names = names;
    this.problems = problems;
    this.places = places;
  }

  void check(StepChecks steps, StepMaskChecks stepMasks, MaskChecks masks) {
    recipe
        .alternates()
        .forEach(
            (name, alternate) -> {
              String path = "alternates/" + name;
              idle(alternate, path);
              Map<String, String> said = new HashMap<>();
              list(alternate.skip(), path, "skip", true, said);
              list(alternate.show(), path, "show", false, said);
              set(alternate, path + "/set", said);
              Alternates.changedSteps(recipe, names, alternate)
                  .forEach(
                      (step, changed) -> {
                        Set<String> keys = alternate.set().getOrDefault(step, Map.of()).keySet();
                        String at = path + "/set/" + step;
                        steps.changed(changed, keys, at);
                        MaskUse mask = changed.mask();
                        if (mask != null && keys.contains("mask")) {
                          stepMasks.check(path(step), mask, at + "/mask");
                          masks.use(mask, at + "/mask");
                        }
                      });
            });
  }

  private void idle(Alternate alternate, String path) {
    if (alternate.skip().isEmpty() && alternate.show().isEmpty() && alternate.set().isEmpty()) {
      String sentence =
          "this alternate changes nothing, so it is the picture itself; `main` is that";
      problems.notice(places.spot(path), path, sentence, "no change", "skip, show or set");
    }
  }

  /** The steps that are left out, or those that are brought in. */
  private void list(
      List<String> steps, String path, String key, boolean skip, Map<String, String> said) {
    for (int i = 0; i < steps.size(); i++) {
      String step = steps.get(i);
      String at = path + "/" + key + "/#" + (i + 1);
      String before = said.putIfAbsent(path(step), key);
      if (before != null) {
        twice(at, step, before.equals(key) ? "twice under `" + key + "`" : both(before, key));
      } else if (StepNames.step(recipe, path(step)).skip() == skip) {
        problems.notice(
            places.spot(at),
            at,
            skip
                ? "`" + step + "` is left out already, by its own skip: true"
                : "`" + step + "` is there already; only a step with skip: true can be brought in",
            step,
            skip ? "a step that is done" : "a step with skip: true");
      }
    }
  }

  private void set(Alternate alternate, String path, Map<String, String> said) {
    Map<String, String> known = new HashMap<>();
    alternate
        .set()
        .forEach(
            (step, keys) -> {
              String first = known.putIfAbsent(path(step), step);
              String listed = said.get(path(step));
              if (first != null) {
                twice(
                    path + "/" + step,
                    step,
                    "twice under `set`, the other time as `" + first + "`");
              } else if (listed != null && keys.containsKey("skip")) {
                twice(path + "/" + step + "/skip", step, both(listed, "set"));
              }
            });
  }

  private static String both(String first, String second) {
    return "under `" + first + "` and under `" + second + "`";
  }

  private void twice(String at, String step, String where) {
    Spot spot = places.spot(at);
    problems.add(spot, at, "`" + step + "` stands " + where + "; keep one", step, "each step once");
  }

  private String path(String step) {
    return names.path(step).orElseThrow();
  }
}
