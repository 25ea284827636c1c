package org.duskply.engine.blend;

import org.duskply.recipe.step.Blend;

/** {@code saturation}. */
class SaturationTest extends NonSeparableContract {
  @Override
  protected Blend mode() {
    return Blend.SATURATION;
  }
}
