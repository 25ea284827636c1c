package org.duskply.engine.testing.reference;

import org.duskply.recipe.step.Blend;

/** The blend modes of W3C Compositing and Blending 1 with this engine's extension above 1. */
public final class ReferenceBlend {
  private ReferenceBlend() {}

  /** One channel: {@code f} laid over {@code b}. */
  public static double of(Blend mode, double b, double f) {
    return switch (mode) {
      case NORMAL -> f;
      case MULTIPLY -> b * f;
      case SCREEN -> screen(b < 0 ? 0 : b, f < 0 ? 0 : f);
      case DARKEN -> b < f ? b : f;
      case LIGHTEN -> b > f ? b : f;
      case PLUS_LIGHTER -> b + f;
    };
  }

  private static double screen(double b, double f) {
    return b <= 1 && f <= 1 ? b + f - b * f : b > f ? b : f;
  }
}
