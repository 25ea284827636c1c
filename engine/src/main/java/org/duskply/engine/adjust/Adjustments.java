package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Channel;
import org.jspecify.annotations.Nullable;

/**
 * Lists of adjustments, prepared as one kernel. Those that leave every picture as it is are
 * dropped; consecutive tones of the channels become one curve a channel, and consecutive tones of
 * the luminance one curve of the luminance. That is their definition, whatever step they stand in:
 * exact up to the end of the run and rounded once.
 */
public final class Adjustments {
  /**
   * Tones that become one curve; a longer run is prepared in parts, so that its cost stays even.
   */
  static final int LONGEST_RUN = 16;

  private Adjustments() {}

  /** Whether {@code adjustment} leaves every picture as it is. */
  public static boolean identity(Adjustment adjustment) {
    return Bindings.of(adjustment).isIdentity(adjustment);
  }

  /**
   * The kernel of {@code list}, done in order.
   *
   * @param list within the ranges that a recipe allows; may be empty
   * @param working whose linear values the kernel changes
   */
  public static AdjustKernel prepare(List<Adjustment> list, ColourSpace working) {
    List<AdjustKernel> kernels = new ArrayList<>();
    List<Adjustment> run = new ArrayList<>();
    for (Adjustment adjustment : list) {
      if (identity(adjustment)) {
        continue;
      }
      if (!run.isEmpty() && !(joins(run.get(0), adjustment) && run.size() < LONGEST_RUN)) {
        kernels.add(kernel(run, working));
        run.clear();
      }
      run.add(adjustment);
    }
    if (!run.isEmpty()) {
      kernels.add(kernel(run, working));
    }
    return kernels.size() == 1 ? kernels.get(0) : new AdjustSequence(kernels);
  }

  private static boolean joins(Adjustment first, Adjustment next) {
    Channel one = channel(first);
    Channel other = channel(next);
    return one != null
        && other != null
        && (one == Channel.LUMINANCE) == (other == Channel.LUMINANCE);
  }

  private static AdjustKernel kernel(List<Adjustment> run, ColourSpace working) {
    Adjustment first = run.get(0);
    Channel channel = channel(first);
    if (channel == null) {
      return Bindings.of(first).kernelOf(first, working);
    }
    return channel == Channel.LUMINANCE
        ? LuminanceKernel.prepare(run, working)
        : ChannelKernel.prepare(run);
  }

  static @Nullable Channel channel(Adjustment adjustment) {
    return Bindings.of(adjustment).channelOf(adjustment);
  }
}
