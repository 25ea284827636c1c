package org.duskply.recipe;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.text.Nearest;
import org.duskply.recipe.text.TreePlaces;

/**
 * What the steps of a recipe are called: by their {@code id}; without one, by the name of their
 * frame while one step alone uses that frame and no step has it for its id; else by their place,
 * {@code #7}, in a group {@code water/#2}, in {@code finish} {@code finish/#1}.
 */
public final class StepNames {
  /** What the last steps stand under; not to be the id of a step. */
  static final String FINISH = "finish";

  private final Map<String, String> nameByPath = new LinkedHashMap<>();
  private final Map<String, String> pathByName = new LinkedHashMap<>();
  private final Map<String, String> pathByPlace = new LinkedHashMap<>();

  private StepNames() {}

  /** The names of a recipe's steps, those in groups and in {@code finish} included. */
  public static StepNames of(Recipe recipe) {
    return of(StepOutline.of(recipe.steps()), StepOutline.of(recipe.finish().steps()));
  }

  /** The names of the steps in a text, which may yet be wrong. */
  static StepNames of(TreePlaces text) {
    return of(StepOutline.of(text.part("steps")), StepOutline.of(text.part(FINISH + "/steps")));
  }

  private static StepNames of(List<StepOutline> steps, List<StepOutline> finish) {
    StepNames names = new StepNames();
    Map<String, Integer> uses = new HashMap<>();
    count(steps, uses);
    count(finish, uses);
    names.add(steps, "steps", "", uses);
    names.add(finish, FINISH + "/steps", FINISH + "/", uses);
    return names;
  }

  /** How often each frame is used by steps, and each id as a use that bars the name. */
  private static void count(List<StepOutline> steps, Map<String, Integer> uses) {
    for (StepOutline step : steps) {
      String frame = step.frame();
      if (frame != null) {
        uses.merge(frame, 1, Integer::sum);
      }
      if (step.id() != null && !step.id().equals(frame)) {
        uses.merge(step.id(), 2, Integer::sum);
      }
      count(step.members(), uses);
    }
  }

  private void add(List<StepOutline> steps, String path, String group, Map<String, Integer> uses) {
    for (int i = 0; i < steps.size(); i++) {
      StepOutline step = steps.get(i);
      String place = group + "#" + (i + 1);
      String stepPath = path + "/#" + (i + 1);
      String frame = step.frame();
      boolean alone = frame != null && uses.getOrDefault(frame, 0) == 1;
      String name = step.id() != null ? step.id() : alone && frame != null ? frame : place;
      nameByPath.put(stepPath, name);
      pathByName.putIfAbsent(name, stepPath);
      pathByPlace.put(place, stepPath);
      add(step.members(), stepPath + "/group", name + "/", uses);
    }
  }

  /**
   * The name of a step.
   *
   * @param path as in {@link Places}: {@code steps/#4}, {@code steps/#4/group/#2}, {@code
   *     finish/steps/#1}
   * @throws IllegalArgumentException if no step stands at that path
   */
  public String name(String path) {
    String name = nameByPath.get(path);
    if (name == null) {
      throw new IllegalArgumentException("there is no step at " + path);
    }
    return name;
  }

  /**
   * The step at a path.
   *
   * @throws IllegalArgumentException if no step stands at that path
   */
  public static Step step(Recipe recipe, String path) {
    List<Step> steps = path.startsWith(FINISH + "/") ? recipe.finish().steps() : recipe.steps();
    Step step = null;
    for (String segment : path.split("/", -1)) {
      if (segment.startsWith("#")) {
        int index = Integer.parseInt(segment.substring(1)) - 1;
        step = index >= 0 && index < steps.size() ? steps.get(index) : null;
        steps = step != null && step.verb() instanceof Group group ? group.steps() : List.of();
      }
    }
    if (step == null) {
      throw new IllegalArgumentException("there is no step at " + path);
    }
    return step;
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
