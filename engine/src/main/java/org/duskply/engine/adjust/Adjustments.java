package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.pixel.Held;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.adjust.Shoulder;
import org.duskply.recipe.shape.Shape;

/**
 * The table of adjustments: which kernel stands for which, and a list of them as one kernel.
 *
 * <p>Adjustments that change nothing are left out. Neighbours that treat each channel alone by a
 * curve on one axis become one {@link ToneKernel}, up to {@value #LONGEST_RUN} curves at a time: so
 * it is defined, whatever else a plan fuses or leaves apart.
 */
public final class Adjustments {
  /**
   * How many neighbours become one kernel at most. Preparing a run takes time as the square of its
   * length; parts of this length keep a list of thousands from a stranger cheap.
   */
  static final int LONGEST_RUN = 16;

  private Adjustments() {}

  /**
   * The kernel that does {@code adjustments} in order.
   *
   * @param working the space of the linear values
   */
  public static AdjustKernel prepare(List<Adjustment> adjustments, ColourSpace working) {
    List<AdjustKernel> kernels = new ArrayList<>();
    List<ToneKernel.Part> run = new ArrayList<>();
    for (Adjustment adjustment : adjustments) {
      if (Shape.isIdentityOf(adjustment)) {
        continue;
      }
      List<ToneKernel.Part> parts = parts(adjustment);
      if (!run.isEmpty() && !joins(parts, run)) {
        kernels.add(ToneKernel.prepare(run));
        run.clear();
      }
      if (parts.isEmpty()) {
        kernels.add(alone(adjustment, working));
      } else {
        run.addAll(parts);
      }
    }
    if (!run.isEmpty()) {
      kernels.add(ToneKernel.prepare(run));
    }
    return new InOrder(kernels);
  }

  private static boolean joins(List<ToneKernel.Part> parts, List<ToneKernel.Part> run) {
    return !parts.isEmpty()
        && parts.get(0).axis() == run.get(0).axis()
        && run.size() + parts.size() <= LONGEST_RUN;
  }

  /** The adjustment as tones of single channels on one axis, in order; none if it is not such. */
  private static List<ToneKernel.Part> parts(Adjustment adjustment) {
    if (adjustment instanceof Ends ends) {
      return List.of(new ToneKernel.Part(Channel.RGB, Axis.ENCODED, EndsTone.of(ends)));
    }
    if (adjustment instanceof Power power) {
      return List.of(new ToneKernel.Part(Channel.RGB, Axis.ENCODED, PowerTone.of(power)));
    }
    if (adjustment instanceof Curve curve && curve.channel() != Channel.LUMINANCE) {
      return List.of(new ToneKernel.Part(curve.channel(), curve.axis(), CurveTone.of(curve)));
    }
    if (adjustment instanceof Shoulder shoulder) {
      return List.of(new ToneKernel.Part(Channel.RGB, Axis.LINEAR, ShoulderTone.of(shoulder)));
    }
    if (adjustment instanceof Cdl cdl && cdl.saturation() == 1) {
      return CdlTones.parts(cdl);
    }
    return List.of();
  }

  private static AdjustKernel alone(Adjustment adjustment, ColourSpace working) {
    if (adjustment instanceof Exposure exposure) {
      return ExposureKernel.prepare(exposure);
    }
    if (adjustment instanceof Curve curve) {
      return LuminanceToneKernel.prepare(CurveTone.of(curve), curve.axis(), working.luminance());
    }
    if (adjustment instanceof Contrast contrast) {
      return ContrastKernel.prepare(contrast, working.luminance());
    }
    if (adjustment instanceof Saturation saturation) {
      return SaturationKernel.prepare(saturation, Oklab.of(working));
    }
    if (adjustment instanceof Gel gel) {
      return GelKernel.prepare(gel, working);
    }
    if (adjustment instanceof Hue hue) {
      return HueKernel.prepare(hue, Oklab.of(working));
    }
    if (adjustment instanceof Cdl cdl) {
      return CdlKernel.prepare(cdl);
    }
    throw new IllegalArgumentException("no kernel for " + adjustment);
  }

  /** Kernels one after the other over the same pixels, each result {@link Held}. */
  private record InOrder(List<AdjustKernel> kernels) implements AdjustKernel {
    InOrder {
      kernels = List.copyOf(kernels);
    }

    @Override
    public void run(float[] red, float[] green, float[] blue, int from, int to) {
      for (AdjustKernel kernel : kernels) {
        kernel.run(red, green, blue, from, to);
        Held.hold(red, from, to);
        Held.hold(green, from, to);
        Held.hold(blue, from, to);
      }
    }
  }
}
