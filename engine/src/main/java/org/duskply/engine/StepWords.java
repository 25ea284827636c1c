package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.Frame;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.jspecify.annotations.Nullable;

/** A step in words. */
final class StepWords {
  private StepWords() {}

  /**
   * The step as the rest of a sentence that begins with its name.
   *
   * @param area share of the picture that its mask shows; absent where it was not measured
   */
  static String sentence(Step step, @Nullable Double area, Recipe recipe) {
    return what(step.verb(), recipe)
        + where(step.mask(), area, recipe)
        + strength(step.opacity())
        + ".";
  }

  /** The table of verbs: one line each. */
  private static String what(Verb verb, Recipe recipe) {
    if (verb instanceof Pop pop) {
      return "lightens with " + frame(pop.frame(), recipe) + treated(pop.treat());
    }
    if (verb instanceof Lay lay) {
      String comma = lay.treat().isEmpty() ? "" : ",";
      String how = lay.blend() == Blend.NORMAL ? "" : " by " + lay.blend().key();
      return "lays " + frame(lay.frame(), recipe) + treated(lay.treat()) + comma + " over it" + how;
    }
    if (verb instanceof Adjust adjust) {
      return "adjusts what is there by " + AdjustmentWords.list(adjust.adjustments());
    }
    int steps = ((Group) verb).steps().size();
    return "does " + (steps == 1 ? "one step" : steps + " steps together");
  }

  private static String frame(String name, Recipe recipe) {
    Frame frame = recipe.frames().get(name);
    return "the frame " + name + (frame == null ? "" : " (" + frame.file() + ")");
  }

  private static String treated(List<Adjustment> treat) {
    return treat.isEmpty() ? "" : ", treated with " + AdjustmentWords.list(treat);
  }

  private static String where(@Nullable MaskUse use, @Nullable Double area, Recipe recipe) {
    if (use == null) {
      return ", everywhere";
    }
    List<String> more = new ArrayList<>();
    Mask mask = mask(use, recipe);
    if (mask != null && !MaskWords.of(mask).isEmpty()) {
      more.add(MaskWords.of(mask));
    }
    if (area != null) {
      more.add(NumberWords.percent(area) + " of the picture");
    }
    String name = use instanceof MaskUse.Named named ? "the mask " + named.name() : "its own mask";
    String inBrackets = more.isEmpty() ? "" : " (" + String.join("; ", more) + ")";
    return ", where " + name + " shows" + inBrackets;
  }

  private static @Nullable Mask mask(MaskUse use, Recipe recipe) {
    return use instanceof MaskUse.Named named
        ? recipe.masks().get(named.name())
        : ((MaskUse.Inline) use).mask();
  }

  private static String strength(double opacity) {
    return opacity == 1 ? "" : ", at opacity " + NumberWords.exact(opacity);
  }
}
