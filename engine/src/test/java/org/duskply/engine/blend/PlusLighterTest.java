package org.duskply.engine.blend;

import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;

/** {@code plus-lighter}. */
class PlusLighterTest extends BlendKernelContract {
  @Override
  protected BlendKernel kernel() {
    return Blends.of(Blend.PLUS_LIGHTER);
  }

  @Override
  protected double formula(double below, double frame) {
    return BlendFormulas.plusLighter(below, frame);
  }
}
