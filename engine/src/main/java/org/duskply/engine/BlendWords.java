package org.duskply.engine;

import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Lay;

/** Blend modes in words of what they do. */
final class BlendWords {
  private BlendWords() {}

  /** How a frame is laid over the picture, to follow "is laid over the picture". */
  static String how(Lay lay) {
    if (lay.blend() == Blend.NORMAL) {
      return "";
    }
    boolean encoded = lay.blendIn() == Axis.ENCODED && !lay.blend().choosesOnly();
    return " by "
        + lay.blend().key()
        + (encoded ? " of encoded values" : "")
        + ", which "
        + effect(lay.blend());
  }

  private static String effect(Blend mode) {
    return switch (mode) {
      case NORMAL -> "puts the frame in its place";
      case MULTIPLY -> "multiplies the two";
      case SCREEN -> "multiplies what each lacks to white";
      case OVERLAY ->
          "multiplies the two where the picture is dark and screens them where it is bright";
      case DARKEN -> "keeps the darker of the two in each channel";
      case LIGHTEN -> "keeps the brighter of the two in each channel";
      case COLOR_DODGE -> "brightens the picture the more, the brighter the frame is";
      case COLOR_BURN -> "darkens the picture the more, the darker the frame is";
      case HARD_LIGHT ->
          "multiplies the two where the frame is dark and screens them where it is bright";
      case SOFT_LIGHT ->
          "gently darkens the picture where the frame is dark and lightens it where it is bright";
      case DIFFERENCE -> "leaves how far the two are apart";
      case EXCLUSION -> "leaves how far the two are apart, with less contrast";
      case HUE -> "gives the picture the frame's hue";
      case SATURATION -> "gives the picture the frame's saturation";
      case COLOR -> "gives the picture the frame's hue and saturation";
      case LUMINOSITY -> "gives the picture the frame's luminosity";
      case PLUS_LIGHTER -> "adds the one to the other";
    };
  }
}
