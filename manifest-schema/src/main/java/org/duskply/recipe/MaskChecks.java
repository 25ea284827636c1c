package org.duskply.recipe;

import java.util.List;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Outlines;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.TreePlaces;

/** Looks at what masks may do only with certain others, once all names are known. */
final class MaskChecks {
  private final Problems problems;
  private final TreePlaces places;
  private final Outlines outlines;

  MaskChecks(Recipe recipe, Problems problems, TreePlaces places) {
    this.problems = problems;
    this.places = places;
    this.outlines = new Outlines(recipe.masks());
  }

  void check(Recipe recipe) {
    recipe.masks().forEach((name, mask) -> mask(mask, "masks/" + name));
    steps(recipe.steps(), "steps");
    steps(recipe.finish().steps(), "finish/steps");
  }

  private void steps(List<Step> steps, String path) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String at = path + "/#" + (i + 1);
      if (step.mask() != null) {
        use(step.mask(), at + "/mask");
      }
      if (step.verb() instanceof Group group) {
        steps(group.steps(), at + "/group");
      }
    }
  }

  /** Looks at a mask of a step; one that is named is looked at where it stands. */
  void use(MaskUse use, String path) {
    if (use instanceof MaskUse.Inline inline) {
      mask(inline.mask(), path);
    }
  }

  private void mask(Mask mask, String path) {
    Fault fault = outlines.fault(mask);
    if (fault != null) {
      String at = path + "/" + fault.at();
      problems.add(places.spot(at), at, fault.sentence(), fault.found(), fault.expected());
    }
    uses(mask.within(), path + "/within");
    uses(mask.except(), path + "/except");
    MaskKind kind = mask.kind();
    if (kind instanceof AnyOf any) {
      uses(any.members(), path + "/any-of");
    } else if (kind instanceof AllOf all) {
      uses(all.members(), path + "/all-of");
    }
  }

  private void uses(List<MaskUse> uses, String path) {
    for (int i = 0; i < uses.size(); i++) {
      use(uses.get(i), path + "/#" + (i + 1));
    }
  }
}
