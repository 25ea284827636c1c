package org.duskply.engine;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Compare;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Falloff;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Shade;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.step.Vignette;

/**
 * A step as an equation in linear light: b the picture below, f the frame, m the mask, c the
 * frame's coverage, T what the incoming light is treated with, A what the picture is adjusted by.
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
      String incoming = incoming(pop.treat());
      return pop.compare() == Compare.CHANNELS
          ? "max(b, " + incoming + ")"
          : "brighter(b, " + incoming + ")";
    }
    if (verb instanceof Lay lay) {
      return BlendFormula.result(lay, incoming(lay.treat()));
    }
    if (verb instanceof Adjust) {
      return "A(b)";
    }
    if (verb instanceof Dodge dodge) {
      return shaded(dodge.shade(), dodge.shade().stops());
    }
    if (verb instanceof Burn burn) {
      return shaded(burn.shade(), -burn.shade().stops());
    }
    if (verb instanceof Vignette vignette) {
      return "b·2^(" + NumberWords.signed(vignette.falloff().stops()) + "·s)";
    }
    return ((Group) verb).treat().isEmpty()
        ? "steps(b)"
        : "(b + T(max(0, steps(b) − b)) − max(0, b − steps(b)))";
  }

  private static String shaded(Shade shade, double stops) {
    String light = "b·2^" + AdjustmentFormula.inBrackets(stops);
    return shade.gel() == null ? light : "W(" + light + ")";
  }

  private static String incoming(List<?> treat) {
    return treat.isEmpty() ? "f" : "T(f)";
  }

  /** What the letters of this step alone stand for. */
  private static String meaning(Verb verb) {
    if (verb instanceof Adjust adjust) {
      return "; A: " + AdjustmentFormula.list(adjust.adjustments());
    }
    if (verb instanceof Pop pop) {
      String brighter =
          pop.compare() == Compare.CHANNELS
              ? ""
              : "; brighter: the one of greater luminance, and between them where they are within"
                  + " 0.1 stops of each other";
      return brighter + treated(pop.treat());
    }
    if (verb instanceof Lay lay) {
      return BlendFormula.meaning(lay) + treated(lay.treat());
    }
    if (verb instanceof Group group) {
      return treated(group.treat());
    }
    if (verb instanceof Dodge dodge) {
      return gel(dodge.shade());
    }
    if (verb instanceof Burn burn) {
      return gel(burn.shade());
    }
    return verb instanceof Vignette vignette ? falloff(vignette.falloff()) : "";
  }

  private static String treated(List<Adjustment> treat) {
    return treat.isEmpty() ? "" : "; T: " + AdjustmentFormula.list(treat);
  }

  private static String gel(Shade shade) {
    return shade.gel() == null ? "" : "; W: " + AdjustmentFormula.list(List.of(shade.gel()));
  }

  private static String falloff(Falloff falloff) {
    return "; s: 0 up to "
        + NumberWords.exact(falloff.begins())
        + " of half the diagonal from the centre, 1 from "
        + NumberWords.exact(falloff.full())
        + " on, 3u² − 2u³ between";
  }
}
