package org.duskply.engine.blend;

import org.duskply.recipe.step.Blend;

/** {@code luminosity}. */
class LuminosityTest extends NonSeparableContract {
  @Override
  protected Blend mode() {
    return Blend.LUMINOSITY;
  }
}
