package org.duskply.recipe;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.ShownSteps;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/**
 * The steps that a picture depends on, each with its place among them: those that change something,
 * and those that masks ask for, which show somewhere even if they change nothing there.
 */
final class StepPlaces {
  private final StepNames names;
  private final Map<String, Step> stepByPath = new HashMap<>();
  private final Set<Step> asked = new HashSet<>();
  private final Map<String, String> placeByPath = new HashMap<>();

  private StepPlaces(StepNames names) {
    this.names = names;
  }

  static StepPlaces of(Recipe recipe) {
    StepPlaces places = new StepPlaces(StepNames.of(recipe));
    places.index(recipe.steps(), "steps");
    places.index(recipe.finish().steps(), "finish/steps");
    recipe.masks().values().forEach(places::ask);
    places.stepByPath.values().stream()
        .map(Step::mask)
        .filter(MaskUse.Inline.class::isInstance)
        .forEach(use -> places.ask(((MaskUse.Inline) use).mask()));
    places.place(recipe.steps(), "steps", "");
    places.place(recipe.finish().steps(), "finish/steps", "finish/");
    return places;
  }

  /** Whether the picture depends on a step. */
  boolean kept(Object step) {
    return !Shape.isIdentityOf(step) || step instanceof Step known && asked.contains(known);
  }

  /** The place of the step that goes by {@code name}; null where the picture does without it. */
  @Nullable String place(String name) {
    return names.path(name).map(placeByPath::get).orElse(null);
  }

  private void index(List<Step> steps, String prefix) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String path = prefix + "/#" + (i + 1);
      stepByPath.put(path, step);
      if (step.verb() instanceof Group group) {
        index(group.steps(), path + "/group");
      }
    }
  }

  private void ask(Mask mask) {
    if (mask.kind() instanceof ShownSteps shown) {
      for (String name : shown.steps()) {
        Step step = names.path(name).map(stepByPath::get).orElse(null);
        if (step != null) {
          ask(step);
        }
      }
    }
    for (MaskUse part : mask.parts()) {
      if (part instanceof MaskUse.Inline inline) {
        ask(inline.mask());
      }
    }
  }

  private void ask(Step step) {
    if (!step.skip() && step.opacity() > 0 && asked.add(step)) {
      if (step.verb() instanceof Group group) {
        group.steps().forEach(this::ask);
      }
    }
  }

  private void place(List<Step> steps, String prefix, String around) {
    int count = 0;
    for (int i = 0; i < steps.size(); i++) {
      if (kept(steps.get(i))) {
        String path = prefix + "/#" + (i + 1);
        String place = around + "#" + ++count;
        placeByPath.put(path, place);
        if (steps.get(i).verb() instanceof Group group) {
          place(group.steps(), path + "/group", place + "/");
        }
      }
    }
  }
}
