package org.duskply.engine.testing.reference;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Compare;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.step.Vignette;

/**
 * A recipe's steps pixel by pixel in plain double, straight from the formulas, without a plan,
 * runs, tables or floats; and how far the engine may be from that, step after step. It knows the
 * frames in linear light and the masks as they are.
 */
public final class PlainCompositor {
  private static final double UNIT = Estimate.UNIT;

  private final double[] weights;
  private final PlainAdjustments adjustments;
  private final Frames frames;
  private final Masks masks;
  private final int width;
  private final int height;

  /** Frames in linear light. */
  public interface Frames {
    /** Red, green, blue and coverage. */
    double[] at(String name, int x, int y);
  }

  /** Masks of steps. */
  public interface Masks {
    /** The value of the mask of the step with that path; 1 where it has none. */
    double at(String path, int x, int y);
  }

  /** A compositor for a canvas that is the grid and the finished picture at once. */
  public PlainCompositor(ColourSpace working, Frames frames, Masks masks, int width, int height) {
    this.weights = working.luminance();
    this.adjustments = new PlainAdjustments(working);
    this.frames = frames;
    this.masks = masks;
    this.width = width;
    this.height = height;
  }

  /** One pixel of the picture that steps make of a base. */
  public Estimate pixel(String base, List<Step> steps, int x, int y) {
    return fold(frame(base, x, y), steps, "steps", x, y);
  }

  private Estimate fold(Estimate below, List<Step> steps, String path, int x, int y) {
    Estimate picture = below;
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String own = path + "/#" + (i + 1);
      double weight = masks.at(own, x, y) * coverage(step.verb(), x, y) * step.opacity();
      if (!step.skip() && weight > 0) {
        picture = picture.mixed(made(picture, step.verb(), own, x, y), weight);
      }
    }
    return picture;
  }

  private Estimate made(Estimate below, Verb verb, String path, int x, int y) {
    if (verb instanceof Pop pop) {
      Estimate frame = adjustments.all(pop.treat(), frame(pop.frame(), x, y));
      return pop.compare() == Compare.LUMINANCE
          ? PlainBlends.brighter(weights, below, frame)
          : below.combined(frame, PopFormulas::lighter, want -> new double[3]);
    }
    if (verb instanceof Lay lay) {
      Estimate frame = adjustments.all(lay.treat(), frame(lay.frame(), x, y));
      return PlainBlends.laid(lay.blend(), lay.blendIn(), below, frame);
    }
    if (verb instanceof Adjust adjust) {
      return adjustments.all(adjust.adjustments(), below);
    }
    if (verb instanceof Dodge dodge) {
      return adjustments.all(dodge.adjustments(), below);
    }
    if (verb instanceof Burn burn) {
      return adjustments.all(burn.adjustments(), below);
    }
    if (verb instanceof Vignette vignette) {
      return vignetted(below, vignette, x, y);
    }
    Group group = (Group) verb;
    Estimate folded = fold(below, group.steps(), path + "/group", x, y);
    return group.treat().stream().allMatch(Shape::isIdentityOf)
        ? folded
        : relit(below, folded, group);
  }

  private Estimate vignetted(Estimate below, Vignette vignette, int x, int y) {
    double factor = new VignetteFormula(vignette.falloff(), 0, 0, width, height, 1).factor(x, y);
    double share = (0.7 * Math.abs(vignette.falloff().stops()) + 2.1) * UNIT;
    return below.through(
        c -> new double[] {c[0] * factor, c[1] * factor, c[2] * factor},
        want -> scaled(share, want));
  }

  /** Three operations: the differences, and two sums of what is at most below + added. */
  private Estimate relit(Estimate below, Estimate folded, Group group) {
    Estimate added =
        below.combined(
            folded, (b, g) -> each(b, g, (v, w) -> Math.max(0, w - v)), want -> scaled(UNIT, want));
    Estimate treated = adjustments.all(group.treat(), added);
    Estimate taken =
        below.combined(
            folded, (b, g) -> each(b, g, (v, w) -> Math.max(0, v - w)), want -> scaled(UNIT, want));
    double[] out = new double[3];
    double[] off = new double[3];
    for (int c = 0; c < 3; c++) {
      double lit = below.colour()[c] + treated.colour()[c];
      out[c] = lit - taken.colour()[c];
      off[c] =
          below.off()[c]
              + treated.off()[c]
              + taken.off()[c]
              + UNIT * (Math.abs(lit) + Math.abs(out[c]));
    }
    return new Estimate(out, off);
  }

  private static double[] each(double[] b, double[] g, DoubleBinaryOperator operator) {
    double[] out = new double[3];
    for (int c = 0; c < 3; c++) {
      out[c] = operator.applyAsDouble(b[c], g[c]);
    }
    return out;
  }

  private static double[] scaled(double share, double[] colour) {
    return each(colour, colour, (v, w) -> share * Math.abs(v));
  }

  private Estimate frame(String name, int x, int y) {
    double[] c = frames.at(name, x, y);
    return Estimate.exact(c[0], c[1], c[2]);
  }

  private double coverage(Verb verb, int x, int y) {
    String name =
        verb instanceof Pop pop ? pop.frame() : verb instanceof Lay lay ? lay.frame() : "";
    return name.isEmpty() ? 1 : frames.at(name, x, y)[3];
  }
}
