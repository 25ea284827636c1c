package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code exclusion}. */
class ExclusionTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.EXCLUSION;
  }

  /**
   * The difference is rounded once, what is left twice and again with the product, the sum once:
   * each time 2⁻²⁴ of at most b + s.
   */
  @Override
  protected double bound(double b, double s, double want) {
    return 4 * 0x1p-24 * (Math.abs(b) + Math.abs(s));
  }
}
