package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code color-dodge}. */
class ColorDodgeTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.COLOR_DODGE;
  }

  /**
   * Two roundings, of 1 − s and of the quotient; the least float where the quotient is denormal.
   */
  @Override
  protected double bound(double b, double s, double want) {
    return 2.001 * 0x1p-24 * want + Float.MIN_VALUE;
  }
}
