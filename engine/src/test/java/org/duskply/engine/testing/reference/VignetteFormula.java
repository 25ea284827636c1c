package org.duskply.engine.testing.reference;

import org.duskply.recipe.mask.Point;
import org.duskply.recipe.step.Falloff;

/** A vignette's factor in plain double. */
public final class VignetteFormula {
  private final Falloff falloff;
  private final double centreX;
  private final double centreY;
  private final double halfDiagonal;

  /** Measured by a rectangle of the grid, of whose pixels the canvas has {@code scale} for one. */
  public VignetteFormula(
      Falloff falloff, double left, double top, double width, double height, double scale) {
    Point centre = falloff.centre();
    this.falloff = falloff;
    this.centreX = scale * (centre == null ? left + width / 2 : centre.x());
    this.centreY = scale * (centre == null ? top + height / 2 : centre.y());
    this.halfDiagonal = scale * StrictMath.sqrt(width * width + height * height) / 2;
  }

  /** What the light of a pixel is multiplied by. */
  public double factor(double x, double y) {
    double dx = x + 0.5 - centreX;
    double dy = y + 0.5 - centreY;
    double distance = StrictMath.sqrt(dx * dx + dy * dy) / halfDiagonal;
    double share = Smooth.of(falloff.begins(), falloff.full(), distance);
    return StrictMath.pow(2, falloff.stops() * share);
  }
}
