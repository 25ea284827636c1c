package org.duskply.recipe;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.text.Changed;
import org.duskply.recipe.text.Nearest;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.Source;

/** Turns a recipe into one of its alternates. */
public final class Alternates {
  private static final String SKIP = "skip";

  private final Map<String, Map<String, Object>> keysByPath = new LinkedHashMap<>();

  private Alternates(StepNames names, Alternate alternate) {
    alternate.set().forEach((step, keys) -> keys(names, step).putAll(keys));
    alternate.skip().forEach(step -> keys(names, step).put(SKIP, true));
    alternate.show().forEach(step -> keys(names, step).put(SKIP, false));
  }

  /**
   * The recipe as an alternate has it: its steps, those of the finish included, with the changes;
   * all else as it was. Steps keep their places, since those left out are marked to be skipped, and
   * their names: one that goes by a name no longer its own, since a frame has changed, has it for
   * its id. A place of a changed key is where the alternate writes it.
   *
   * @param name of the alternate; {@link Alternate#MAIN} gives the recipe itself
   * @throws IllegalArgumentException if there is no such alternate, or it names a step that is not
   *     there
   * @throws RecipeException if a change of a recipe that a program built does not fit its step
   */
  public static Recipe apply(Recipe recipe, String name) {
    if (name.equals(Alternate.MAIN)) {
      return recipe;
    }
    Alternate alternate = recipe.alternates().get(name);
    if (alternate == null) {
      throw new IllegalArgumentException("there is no alternate called " + name);
    }
    StepNames names = StepNames.of(recipe);
    Alternates change = new Alternates(names, alternate);
    Finish finish = recipe.finish();
    Recipe changed =
        recipe
            .withSteps(change.steps(recipe.steps(), "steps"))
            .withFinish(new Finish(finish.crop(), change.steps(finish.steps(), "finish/steps")))
            .withPlaces(new AlternatePlaces(recipe, name, names));
    return alternate.set().isEmpty() ? changed : named(changed, names);
  }

  /** The name of an alternate that comes nearest to one that does not exist. */
  public static Optional<String> nearest(Recipe recipe, String name) {
    List<String> names = new ArrayList<>(List.of(Alternate.MAIN));
    names.addAll(recipe.alternates().keySet());
    return Optional.ofNullable(Nearest.among(names, name));
  }

  /** The steps that an alternate sets keys of, by the names that it calls them, as they become. */
  static Map<String, Step> changedSteps(Recipe recipe, StepNames names, Alternate alternate) {
    Map<String, Step> steps = new LinkedHashMap<>();
    alternate
        .set()
        .forEach(
            (name, keys) -> {
              String path = path(names, name);
              Step step = StepNames.step(recipe, path);
              steps.put(name, changed(step, keys, path));
            });
    return steps;
  }

  private Map<String, Object> keys(StepNames names, String step) {
    return keysByPath.computeIfAbsent(path(names, step), path -> new LinkedHashMap<>());
  }

  private static String path(StepNames names, String step) {
    return names
        .path(step)
        .orElseThrow(() -> new IllegalArgumentException("there is no step called " + step));
  }

  private List<Step> steps(List<Step> steps, String prefix) {
    List<Step> changed = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      changed.add(step(steps.get(i), prefix + "/#" + (i + 1)));
    }
    return changed;
  }

  private Step step(Step step, String path) {
    Step inner = step;
    if (step.verb() instanceof Group group) {
      inner = step.withVerb(group.withSteps(steps(group.steps(), path + "/group")));
    }
    Map<String, Object> keys = keysByPath.get(path);
    return keys == null ? inner : changed(inner, keys, path);
  }

  private static Step changed(Step step, Map<String, Object> keys, String path) {
    Problems problems = new Problems(new Source("recipe", ""));
    Step changed = Changed.record(Recipe.SHAPE, step, keys, path, problems);
    if (changed == null) {
      throw new RecipeException(problems.inOrder());
    }
    return changed;
  }

  /** The changed recipe with steps that go by the names they had before. */
  private static Recipe named(Recipe changed, StepNames before) {
    StepNames after = StepNames.of(changed);
    if (after.all().equals(before.all())) {
      return changed;
    }
    Finish finish = changed.finish();
    return changed
        .withSteps(named(changed.steps(), "steps", before, after))
        .withFinish(
            new Finish(finish.crop(), named(finish.steps(), "finish/steps", before, after)));
  }

  private static List<Step> named(
      List<Step> steps, String prefix, StepNames before, StepNames after) {
    List<Step> named = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      String path = prefix + "/#" + (i + 1);
      Step step = steps.get(i);
      if (step.verb() instanceof Group group) {
        step = step.withVerb(group.withSteps(named(group.steps(), path + "/group", before, after)));
      }
      String name = before.name(path);
      boolean lost = !name.equals(after.name(path)) && name.indexOf('#') < 0; // places stay
      named.add(lost ? step.withId(name) : step);
    }
    return named;
  }
}
