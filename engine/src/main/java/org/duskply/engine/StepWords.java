package org.duskply.engine;

import java.util.List;
import org.duskply.recipe.Frame;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.mask.Point;
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
import org.jspecify.annotations.Nullable;

/**
 * A step in whole sentences, in the present tense: what is done, how strongly, where; then what is
 * done before that to the light that comes in.
 */
final class StepWords {
  private StepWords() {}

  /**
   * The step.
   *
   * @param members names of the steps in it, of a group
   * @param area share of the picture that its mask shows; NaN where it depends on the picture;
   *     absent where nothing is to be said of it
   * @param masks the words of the recipe's masks
   */
  static String sentence(
      Step step, List<String> members, @Nullable Double area, Recipe recipe, ToldMasks masks) {
    String strength = step.opacity() == 1 ? "" : " at " + NumberWords.share(step.opacity());
    String how = strength + where(step, area, masks);
    return ListWords.capital(done(step.verb(), how, members, recipe)) + ".";
  }

  /** A vignette is everywhere by its nature. */
  private static String where(Step step, @Nullable Double area, ToldMasks masks) {
    if (step.mask() != null) {
      return ", " + MaskWords.place(step.mask(), area, masks);
    }
    return step.verb() instanceof Vignette ? "" : " everywhere";
  }

  /**
   * The table of verbs: one line each.
   *
   * @param how how strongly and where
   */
  private static String done(Verb verb, String how, List<String> members, Recipe recipe) {
    if (verb instanceof Pop pop) {
      String by =
          pop.compare() == Compare.CHANNELS
              ? " channel by channel"
              : " wherever it has the greater luminance";
      String lightens = frame(pop.frame(), recipe) + " lightens the picture" + by + how;
      return lightens + before(pop.treat(), "the frame");
    }
    if (verb instanceof Lay lay) {
      String mode = BlendWords.how(lay);
      String laid = frame(lay.frame(), recipe) + " is laid over the picture" + mode;
      return laid
          + (mode.isEmpty() || how.startsWith(",") ? "" : ",")
          + how
          + before(lay.treat(), "the frame");
    }
    if (verb instanceof Adjust adjust) {
      return "the picture is adjusted"
          + how
          + ": "
          + AdjustmentWords.list(adjust.adjustments(), "it");
    }
    if (verb instanceof Dodge dodge) {
      return "the picture is dodged" + shaded(dodge.shade(), how);
    }
    if (verb instanceof Burn burn) {
      return "the picture is burned in" + shaded(burn.shade(), how);
    }
    return verb instanceof Vignette vignette
        ? vignetted(vignette.falloff(), how)
        : grouped((Group) verb, how, members);
  }

  private static String frame(String name, Recipe recipe) {
    Frame frame = recipe.frames().get(name);
    return "the frame " + name + (frame == null ? "" : " (" + frame.file() + ")");
  }

  /** What is done first to the light that comes in: a sentence of its own, without its stop. */
  private static String before(List<Adjustment> treat, String subject) {
    return treat.isEmpty() ? "" : ". Before that, " + AdjustmentWords.list(treat, subject);
  }

  private static String shaded(Shade shade, String how) {
    String gel = shade.gel() == null ? "" : " and its light " + GelWords.verb(shade.gel());
    return " by " + NumberWords.stops(shade.stops()) + gel + how;
  }

  private static String vignetted(Falloff falloff, String how) {
    Point centre = falloff.centre();
    String from =
        centre == null
            ? "its middle"
            : "the point ("
                + NumberWords.signed(centre.x())
                + ", "
                + NumberWords.signed(centre.y())
                + ")";
    return "the picture is made "
        + (falloff.stops() < 0 ? "darker" : "brighter")
        + " away from "
        + from
        + how
        + ": not at all up to "
        + NumberWords.exact(falloff.begins())
        + " of half its diagonal, by the full "
        + NumberWords.stops(Math.abs(falloff.stops()))
        + " from "
        + NumberWords.exact(falloff.full())
        + " on";
  }

  private static String grouped(Group group, String how, List<String> members) {
    boolean one = members.size() == 1;
    return ListWords.the("step", members)
        + (one ? " is done and mixed in as a whole" : " are done in this order and mixed in as one")
        + how
        + before(group.treat(), "the added light");
  }
}
