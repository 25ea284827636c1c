package org.duskply.engine.blend;

import org.duskply.engine.testing.ColourBlendContract;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;

/** What the four non-separable modes hold to. */
abstract class NonSeparableContract extends ColourBlendContract {
  /** The mode. */
  protected abstract Blend mode();

  @Override
  protected BlendKernel kernel() {
    return Blends.of(mode());
  }

  @Override
  protected double[] formula(double[] below, double[] frame) {
    return BlendFormulas.of(mode(), below, frame);
  }

  /**
   * With M the greatest value: a luminosity is off by 5·2⁻²⁴·M (weights, products and sums), a
   * channel at another saturation by 3·2⁻²⁴·M, the shift by both luminosities and its own rounding,
   * a shifted channel by all of these and once more 2·2⁻²⁴·M: less than 16·2⁻²⁴·M. A clip's
   * quotient is at most 1, and a channel stands at most 0.89/0.11 = 8.1 times as far from the
   * luminosity as the one that is clipped, so that it makes at most ten times as much of that. Both
   * clips at once, at 0 and at white, happen only where M is between 1 and 1.5.
   */
  @Override
  protected double bound(double[] below, double[] frame) {
    double most = greatest(below, frame);
    double clips = most > 1 && most < 1.5 ? 100 : 10;
    return clips * 16 * 0x1p-24 * most;
  }
}
