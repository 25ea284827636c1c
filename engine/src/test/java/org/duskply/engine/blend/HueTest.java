package org.duskply.engine.blend;

import org.duskply.recipe.step.Blend;

/** {@code hue}. */
class HueTest extends NonSeparableContract {
  @Override
  protected Blend mode() {
    return Blend.HUE;
  }
}
