package org.duskply.engine.blend;

import org.duskply.recipe.step.Blend;

/** The table of blend modes: which kernel stands for which. */
public final class Blends {
  private Blends() {}

  /** The kernel of a mode. */
  public static BlendKernel of(Blend blend) {
    return switch (blend) {
      case NORMAL -> new NormalKernel();
      case MULTIPLY -> new MultiplyKernel();
      case SCREEN -> new ScreenKernel();
      case DARKEN -> new DarkenKernel();
      case LIGHTEN -> new LightenKernel();
      case PLUS_LIGHTER -> new PlusLighterKernel();
    };
  }
}
