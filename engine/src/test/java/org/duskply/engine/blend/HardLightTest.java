package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code hard-light}. */
class HardLightTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.HARD_LIGHT;
  }
}
