package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.recipe.step.Blend;

/** {@code lighten}. */
class LightenTest extends BlendKernelContract {
  @Override
  protected Blend mode() {
    return Blend.LIGHTEN;
  }
}
