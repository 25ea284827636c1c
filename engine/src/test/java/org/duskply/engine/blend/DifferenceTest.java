package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code difference}. */
class DifferenceTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.DIFFERENCE;
  }
}
