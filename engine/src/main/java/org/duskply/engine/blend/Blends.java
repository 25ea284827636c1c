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
      case OVERLAY -> new OverlayKernel();
      case DARKEN -> new DarkenKernel();
      case LIGHTEN -> new LightenKernel();
      case COLOR_DODGE -> new ColorDodgeKernel();
      case COLOR_BURN -> new ColorBurnKernel();
      case HARD_LIGHT -> new HardLightKernel();
      case SOFT_LIGHT -> new SoftLightKernel();
      case DIFFERENCE -> new DifferenceKernel();
      case EXCLUSION -> new ExclusionKernel();
      case HUE -> new HueKernel();
      case SATURATION -> new SaturationKernel();
      case COLOR -> new ColorKernel();
      case LUMINOSITY -> new LuminosityKernel();
      case PLUS_LIGHTER -> new PlusLighterKernel();
    };
  }

  /**
   * The kernel that takes the brighter of two colours as a whole.
   *
   * @param weights of red, green and blue in luminance, summing to 1
   */
  public static BlendKernel brighter(double[] weights) {
    return new BrighterKernel(weights);
  }
}
