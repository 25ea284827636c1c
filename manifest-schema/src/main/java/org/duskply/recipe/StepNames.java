package org.duskply.recipe;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.text.Nearest;
import org.jspecify.annotations.Nullable;

/**
 * What the steps of a recipe are called: by their {@code id}; without one, by the name of their
 * frame while one step alone uses that frame and no step has it for its id; else by their place,
 * {@code #7}, in a group {@code water/#2}.
 */
public final class StepNames {
  private final Map<String, String> nameByPath = new LinkedHashMap<>();
  private final Map<String, String> pathByName = new LinkedHashMap<>();
  private final Map<String, String> pathByPlace = new LinkedHashMap<>();

  private StepNames() {}

  /** The names of a recipe's steps, those in groups included. */
  public static StepNames of(Recipe recipe) {
    StepNames names = new StepNames();
    Map<String, Integer> uses = new HashMap<>();
    count(recipe.steps(), uses);
    names.add(recipe.steps(), "steps", "", uses);
    return names;
  }

  /** How often each frame is used by steps, and each id as a use that bars the name. */
  private static void count(List<Step> steps, Map<String, Integer> uses) {
    for (Step step : steps) {
      String frame = frame(step);
      if (frame != null) {
        uses.merge(frame, 1, Integer::sum);
      }
      if (step.id() != null && !step.id().equals(frame)) {
        uses.merge(step.id(), 2, Integer::sum);
      }
      if (step.verb() instanceof Group group) {
        count(group.steps(), uses);
      }
    }
  }

  private void add(List<Step> steps, String path, String group, Map<String, Integer> uses) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String place = group + "#" + (i + 1);
      String stepPath = path + "/#" + (i + 1);
      String frame = frame(step);
      boolean alone = frame != null && uses.getOrDefault(frame, 0) == 1;
      String name = step.id() != null ? step.id() : alone && frame != null ? frame : place;
      nameByPath.put(stepPath, name);
      pathByName.putIfAbsent(name, stepPath);
      pathByPlace.put(place, stepPath);
      if (step.verb() instanceof Group inner) {
        add(inner.steps(), stepPath + "/group", name + "/", uses);
      }
    }
  }

  private static @Nullable String frame(Step step) {
    if (step.verb() instanceof Pop pop) {
      return pop.frame();
    }
    return step.verb() instanceof Lay lay ? lay.frame() : null;
  }

  /**
   * The name of a step.
   *
   * @param path as in {@link Places}: {@code steps/#4}, {@code steps/#4/group/#2}
   * @throws IllegalArgumentException if no step stands at that path
   */
  public String name(String path) {
    String name = nameByPath.get(path);
    if (name == null) {
      throw new IllegalArgumentException("there is no step at " + path);
    }
    return name;
  }

  /** The path of the step with that name or at that place, {@code #7}. */
  public Optional<String> path(String name) {
    String path = pathByName.get(name);
    return Optional.ofNullable(path != null ? path : pathByPlace.get(name));
  }

  /** The name that exists and comes nearest to one that does not. */
  public Optional<String> nearest(String name) {
    return Optional.ofNullable(Nearest.among(pathByName.keySet(), name));
  }

  /** All names by path, in the order of the steps, each group before its members. */
  public Map<String, String> all() {
    return Collections.unmodifiableMap(nameByPath);
  }
}
