package org.duskply.engine.blend;

import org.duskply.recipe.step.Blend;

/** {@code color}. */
class ColorTest extends NonSeparableContract {
  @Override
  protected Blend mode() {
    return Blend.COLOR;
  }
}
