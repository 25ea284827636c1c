package org.duskply.engine.blend;

import org.duskply.recipe.step.Blend;

/** The kernel of each blend mode. */
public final class Blends {
  private Blends() {}

  /** The kernel of {@code mode}. */
  public static BlendKernel of(Blend mode) {
    return switch (mode) {
      case NORMAL -> Normal::run;
      case MULTIPLY -> Multiply::run;
      case SCREEN -> Screen::run;
      case DARKEN -> Darken::run;
      case LIGHTEN -> Lighten::run;
      case PLUS_LIGHTER -> PlusLighter::run;
    };
  }
}
