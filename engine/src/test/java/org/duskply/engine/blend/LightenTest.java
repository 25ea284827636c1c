package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;

/** {@code lighten}. */
class LightenTest extends BlendKernelContract {
  @Override
  protected BlendKernel kernel() {
    return Blends.of(Blend.LIGHTEN);
  }

  @Override
  protected double formula(double below, double frame) {
    return BlendFormulas.lighten(below, frame);
  }
}
