package org.duskply.recipe;

import java.util.List;
import java.util.Set;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.step.Vignette;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.TreePlaces;
import org.jspecify.annotations.Nullable;

/** Looks at steps that do nothing or more than was meant, and at how many there are. */
final class StepChecks {
  private final Problems problems;
  private final TreePlaces places;
  private int count;
  private int adjustments;

  StepChecks(Problems problems, TreePlaces places) {
    this.problems = problems;
    this.places = places;
  }

  void check(Recipe recipe) {
    steps(recipe.steps(), "steps", 0, true);
    steps(recipe.finish().steps(), "finish/steps", 0, true);
    if (count > Limits.STEPS) {
      problems.add(
          places.spot("steps"),
          "steps",
          "the recipe has " + count + " steps with those in groups; the limit is " + Limits.STEPS,
          count + " steps",
          "at most " + Limits.STEPS);
    }
  }

  /** Says that there are too many adjustments, once all have been met. */
  void checkAdjustments() {
    if (adjustments > Limits.ADJUSTMENTS_IN_ALL) {
      problems.add(
          places.spot("steps"),
          "steps",
          String.format(
              "the recipe has %d adjustments in all its steps and alternates; the limit is %d",
              adjustments, Limits.ADJUSTMENTS_IN_ALL),
          adjustments + " adjustments",
          "at most " + Limits.ADJUSTMENTS_IN_ALL);
    }
  }

  /**
   * Looks at a step as an alternate changes it.
   *
   * @param keys those that the alternate sets
   * @param path where it sets them
   */
  void changed(Step step, Set<String> keys, String path) {
    Shape<?> verb = Shape.of(step.verb().getClass());
    if (keys.contains("treat") || keys.contains(verb.key())) {
      adjustments += adjustments(step.verb());
    }
    if (keys.contains("opacity")) {
      invisible(step, path);
    }
    if (keys.contains("blend") || keys.contains("blend-in")) {
      idleAxis(step, keys.contains("blend-in") ? path + "/blend-in" : path + "/blend");
    }
  }

  /** How many adjustments have tables to prepare: those in lists. */
  private static int adjustments(Verb verb) {
    if (verb instanceof Adjust adjust) {
      return adjust.adjustments().size();
    }
    if (verb instanceof Pop pop) {
      return pop.treat().size();
    }
    if (verb instanceof Lay lay) {
      return lay.treat().size();
    }
    return verb instanceof Group group ? group.treat().size() : 0;
  }

  /**
   * @param masked whether a mask, of the step or of a group around it, bounds what it does
   */
  private void steps(List<Step> steps, String path, int depth, boolean masked) {
    count += steps.size();
    for (int i = 0; i < steps.size(); i++) {
      step(steps.get(i), path + "/#" + (i + 1), depth, masked);
    }
  }

  private void step(Step step, String path, int depth, boolean groupMasked) {
    adjustments += adjustments(step.verb());
    invisible(step, path);
    if (StepNames.FINISH.equals(step.id())) {
      problems.add(
          places.spot(path + "/id"),
          path + "/id",
          "`finish` is where the last steps stand and cannot be a step's id; give it another",
          StepNames.FINISH,
          "another name");
    }
    boolean masked = groupMasked || step.mask() != null;
    String retouch = retouch(step.verb());
    if (retouch != null && depth > 0 && !masked) {
      problems.notice(
          places.spot(path),
          path,
          "this "
              + retouch
              + " has no mask, and neither has its group: it changes the whole picture below,"
              + " not just the group's steps",
          "no mask",
          "a mask");
    }
    idleAxis(step, path + "/blend-in");
    if (step.verb() instanceof Group group) {
      group(group, path, depth + 1, depth == 0 ? step.mask() != null : masked);
    }
  }

  private void invisible(Step step, String path) {
    if (step.opacity() == 0) {
      problems.notice(
          places.spot(path + "/opacity"),
          path + "/opacity",
          "this step shows nothing: its opacity is 0; skip: true says the same more plainly",
          "0",
          "above 0");
    }
  }

  private void idleAxis(Step step, String at) {
    if (step.verb() instanceof Lay lay
        && lay.blendIn() == Axis.ENCODED
        && lay.blend().choosesOnly()) {
      problems.notice(
          places.spot(at),
          at,
          "blend-in changes nothing with "
              + lay.blend().key()
              + ", which only takes one of two values: the same one in linear light and encoded",
          "encoded",
          "no blend-in");
    }
  }

  /** The name of a verb that changes the picture below and brings in no frame; null for others. */
  private static @Nullable String retouch(Verb verb) {
    if (verb instanceof Adjust) {
      return "adjust";
    }
    if (verb instanceof Vignette) {
      return "vignette";
    }
    return verb instanceof Dodge ? "dodge" : verb instanceof Burn ? "burn" : null;
  }

  private void group(Group group, String path, int depth, boolean masked) {
    if (depth > Limits.GROUP_DEPTH) {
      problems.add(
          places.spot(path),
          path,
          "groups stand more than " + Limits.GROUP_DEPTH + " deep in each other here",
          depth + " deep",
          "at most " + Limits.GROUP_DEPTH);
      return;
    }
    steps(group.steps(), path + "/group", depth, masked);
  }
}
