package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;

/** The names of the steps in a group. */
final class Members {
  private Members() {}

  /** Names in order; none for a step that is no group. */
  static List<String> names(Step step, String path, StepNames names) {
    List<String> members = new ArrayList<>();
    if (step.verb() instanceof Group group) {
      for (int i = 1; i <= group.steps().size(); i++) {
        members.add(names.name(path + "/group/#" + i));
      }
    }
    return members;
  }
}
