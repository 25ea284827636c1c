package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code color-burn}. */
class ColorBurnTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.COLOR_BURN;
  }

  /** Roundings of 1 − b, of the quotient, which counts up to 1, and of what it leaves of 1. */
  @Override
  protected double bound(double b, double s, double want) {
    return b >= 1 ? 0 : 2.001 * 0x1p-24 + 0x1p-24 * want;
  }
}
