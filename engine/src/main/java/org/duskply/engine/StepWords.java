package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.Frame;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
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
      String how = pop.compare() == Compare.CHANNELS ? "" : ", compared by luminance";
      return "lightens with " + frame(pop.frame(), recipe) + treated(pop.treat()) + how;
    }
    if (verb instanceof Lay lay) {
      return laid(lay, recipe);
    }
    if (verb instanceof Adjust adjust) {
      return "adjusts what is there by " + AdjustmentWords.list(adjust.adjustments());
    }
    if (verb instanceof Dodge dodge) {
      return "brightens what is there by " + shade(dodge.shade());
    }
    if (verb instanceof Burn burn) {
      return "darkens what is there by " + shade(burn.shade());
    }
    return verb instanceof Vignette vignette
        ? vignetted(vignette.falloff())
        : grouped((Group) verb);
  }

  private static String laid(Lay lay, Recipe recipe) {
    String comma = lay.treat().isEmpty() ? "" : ",";
    boolean encoded = lay.blendIn() == Axis.ENCODED && !lay.blend().choosesOnly();
    String how = lay.blend() == Blend.NORMAL ? "" : " by " + lay.blend().key();
    String axis = encoded ? " of encoded values" : "";
    return "lays "
        + frame(lay.frame(), recipe)
        + treated(lay.treat())
        + comma
        + " over it"
        + how
        + axis;
  }

  private static String grouped(Group group) {
    int count = group.steps().size();
    String treated =
        group.treat().isEmpty()
            ? ""
            : ", the light that "
                + (count == 1 ? "it adds" : "they add")
                + " treated with "
                + AdjustmentWords.list(group.treat());
    return "does " + (count == 1 ? "one step" : count + " steps together") + treated;
  }

  private static String shade(Shade shade) {
    String stops = stops(shade.stops());
    return shade.gel() == null ? stops : stops + ", through a gel " + gel(shade.gel());
  }

  private static String gel(Gel gel) {
    String colour =
        gel.mired() != null
            ? "of " + NumberWords.exact(gel.mired()) + " mired"
            : gel.from() != null && gel.to() != null
                ? "that turns "
                    + NumberWords.exact(gel.from())
                    + " K into "
                    + NumberWords.exact(gel.to())
                    + " K"
                : "";
    String green = gel.plusGreen() == 0 ? "" : "plus-green " + NumberWords.exact(gel.plusGreen());
    return colour.isEmpty() || green.isEmpty() ? colour + green : colour + " and " + green;
  }

  private static String vignetted(Falloff falloff) {
    Point centre = falloff.centre();
    String from =
        centre == null
            ? "the middle"
            : "the point " + NumberWords.exact(centre.x()) + ", " + NumberWords.exact(centre.y());
    return (falloff.stops() < 0 ? "darkens" : "brightens")
        + " what is there away from "
        + from
        + ", by "
        + stops(Math.abs(falloff.stops()))
        + " in full (from "
        + NumberWords.exact(falloff.begins())
        + " to "
        + NumberWords.exact(falloff.full())
        + " of the way to a corner)";
  }

  private static String stops(double stops) {
    return NumberWords.exact(stops) + (stops == 1 ? " stop" : " stops");
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
