package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code plus-lighter}. */
class PlusLighterTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.PLUS_LIGHTER;
  }
}
