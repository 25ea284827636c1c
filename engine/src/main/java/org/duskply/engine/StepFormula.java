package org.duskply.engine;

import java.util.List;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;

/**
 * A step as an equation in linear light: b the picture below, f the frame, m the mask, c the
 * frame's coverage, T what the frame is treated with, A what the picture is adjusted by.
 */
final class StepFormula {
  private StepFormula() {}

  /**
   * The equation.
   *
   * @param covers whether the step's frame is transparent in places
   */
  static String of(Step step, boolean covers) {
    String made = made(step.verb());
    String weight = weight(step, covers);
    String mixed = weight.isEmpty() ? made : "b + " + weight + "·(" + made + " − b)";
    return "out = " + mixed + meaning(step.verb());
  }

  private static String weight(Step step, boolean covers) {
    String masked = step.mask() == null ? "" : "m";
    String covered = covers ? joined(masked, "c") : masked;
    return step.opacity() == 1 ? covered : joined(covered, NumberWords.exact(step.opacity()));
  }

  private static String joined(String factor, String next) {
    return factor.isEmpty() ? next : factor + "·" + next;
  }

  /** The table of verbs: one line each. */
  private static String made(Verb verb) {
    if (verb instanceof Pop pop) {
      return "max(b, " + incoming(pop.treat()) + ")";
    }
    if (verb instanceof Lay lay) {
      return blended(lay.blend(), incoming(lay.treat()));
    }
    return verb instanceof Adjust ? "A(b)" : "steps(b)";
  }

  private static String blended(Blend mode, String f) {
    return switch (mode) {
      case NORMAL -> f;
      case MULTIPLY -> "b·" + f;
      case SCREEN -> "screen(b, " + f + ")";
      case DARKEN -> "min(b, " + f + ")";
      case LIGHTEN -> "max(b, " + f + ")";
      case PLUS_LIGHTER -> "(b + " + f + ")";
    };
  }

  private static String incoming(List<?> treat) {
    return treat.isEmpty() ? "f" : "T(f)";
  }

  /** What the letters of this step alone stand for. */
  private static String meaning(Verb verb) {
    String meaning = "";
    if (verb instanceof Lay lay && lay.blend() == Blend.SCREEN) {
      meaning = "; screen(b, f): b + f − b·f up to white, the greater of the two above";
    }
    if (verb instanceof Adjust adjust) {
      return "; A: " + AdjustmentWords.formulas(adjust.adjustments());
    }
    if (verb instanceof Pop pop && !pop.treat().isEmpty()) {
      return "; T: " + AdjustmentWords.formulas(pop.treat());
    }
    if (verb instanceof Lay lay && !lay.treat().isEmpty()) {
      return meaning + "; T: " + AdjustmentWords.formulas(lay.treat());
    }
    return meaning;
  }
}
