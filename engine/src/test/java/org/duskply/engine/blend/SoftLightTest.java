package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code soft-light}. */
class SoftLightTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.SOFT_LIGHT;
  }

  /**
   * Up to ¼ the polynomial in brackets goes from −12 to 4: half a unit of the last place of 12 is
   * 2⁻²¹, times b, then rounded at 3 and at 4 by 2⁻²³ each, all times b: 4·2⁻²³·b. Above, the root
   * is off by 2⁻²⁵. The difference, its share and the sum are rounded at less than 2·b: together
   * less than 8·2⁻²³·b, b counting up to 1.
   */
  @Override
  protected double bound(double b, double s, double want) {
    return 8 * 0x1p-23 * Math.min(Math.max(b, 0), 1) + Float.MIN_VALUE;
  }
}
