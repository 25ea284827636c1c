package org.duskply.engine;

import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Lay;

/** Blend modes as equations of b, the picture below, and f, what is laid over it. */
final class BlendFormula {
  private static final String OF_LUM =
      ", with Lum = 0.3·R + 0.59·G + 0.11·B and Sat = max − min of the channels, drawn towards grey"
          + " as far as it would leave 0 to white";

  private BlendFormula() {}

  /**
   * The result of a lay.
   *
   * @param f the frame as it is laid: "f" or "T(f)"
   */
  static String result(Lay lay, String f) {
    if (lay.blendIn() == Axis.LINEAR || lay.blend().choosesOnly()) {
      return blended(lay.blend(), "b", f);
    }
    return "L(" + blended(lay.blend(), "E(b)", "E(" + f + ")") + ")";
  }

  /** What the names in the result stand for; empty where it says all itself. */
  static String meaning(Lay lay) {
    String meaning = meaning(lay.blend());
    boolean encoded = lay.blendIn() == Axis.ENCODED && !lay.blend().choosesOnly();
    String axis = encoded ? "; E: the way to encoded values, L: the way back" : "";
    return (meaning.isEmpty() ? "" : "; " + meaning) + axis;
  }

  private static String blended(Blend mode, String b, String f) {
    return switch (mode) {
      case NORMAL -> f;
      case MULTIPLY -> b + "·" + f;
      case DARKEN -> "min(" + b + ", " + f + ")";
      case LIGHTEN -> "max(" + b + ", " + f + ")";
      case DIFFERENCE -> "|" + b + " − " + f + "|";
      case PLUS_LIGHTER -> "(" + b + " + " + f + ")";
      default -> mode.key() + "(" + b + ", " + f + ")";
    };
  }

  private static String meaning(Blend mode) {
    return switch (mode) {
      case NORMAL, MULTIPLY, DARKEN, LIGHTEN, DIFFERENCE, PLUS_LIGHTER -> "";
      case SCREEN -> "screen(b, f): b + f − b·f up to white, the greater of the two above";
      case OVERLAY ->
          "overlay(b, f): 2·b·f where b is at most 0.5, else f and 2·b − 1 screened: x + y − x·y up"
              + " to white, the greater of the two above";
      case HARD_LIGHT ->
          "hard-light(b, f): 2·b·f where f is at most 0.5, else b and 2·f − 1 screened: x + y − x·y"
              + " up to white, the greater of the two above";
      case COLOR_DODGE ->
          "color-dodge(b, f): b/(1 − f), at most 1; where b is 0, or 1 and above, it stays";
      case COLOR_BURN ->
          "color-burn(b, f): 1 − (1 − b)/f, at least 0; where b is 1 and above, it stays";
      case SOFT_LIGHT ->
          "soft-light(b, f): b − (1 − 2·f)·b·(1 − b) where f is at most 0.5, else"
              + " b + (2·f − 1)·(D − b) with D = ((16·b − 12)·b + 4)·b where b is at most 0.25,"
              + " else √b; where b is 1 and above, it stays";
      case EXCLUSION -> "exclusion(b, f): b + f − 2·b·f up to white, |b − f| above";
      case HUE -> "hue(b, f): f with the Sat and Lum of b" + OF_LUM;
      case SATURATION -> "saturation(b, f): b with the Sat of f" + OF_LUM;
      case COLOR -> "color(b, f): f with the Lum of b" + OF_LUM;
      case LUMINOSITY -> "luminosity(b, f): b with the Lum of f" + OF_LUM;
    };
  }
}
