package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.pixel.Held;
import org.duskply.engine.pixel.Numbers;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.step.Falloff;

/**
 * Light that falls off from a centre:
 *
 * <pre>
 * x' = x·2^(stops·smooth(begins, full, ρ))
 * ρ  = distance of the pixel's middle from the centre, over half the picture's diagonal
 * smooth(a, c, t) = 1 for t ≥ c, 0 for t ≤ a, else 3u² − 2u³ with u = (t − a)/(c − a)
 * </pre>
 *
 * <p>A pure function of the place on the canvas, computed in double but for the power; the root is
 * {@code Math.sqrt}, which IEEE 754 and Java round exactly. The exponent is rounded to float, so
 * that the factor is off by at most {@code (1 + |stops|)·2⁻²⁴}. Up to {@code begins} the factor is
 * 1 and the bits stay.
 */
final class VignetteNode implements PointNode {
  private final Node below;
  private final double stops;
  private final double begins;
  private final double full;
  private final double centreX;
  private final double centreY;
  private final double halfDiagonal;

  private VignetteNode(
      Node below, Falloff falloff, double centreX, double centreY, double halfDiagonal) {
    this.below = below;
    this.stops = falloff.stops();
    this.begins = falloff.begins();
    this.full = falloff.full();
    this.centreX = centreX;
    this.centreY = centreY;
    this.halfDiagonal = halfDiagonal;
  }

  /**
   * A vignette.
   *
   * @param extent the finished picture on the grid
   * @param scale pixels of the canvas for one of the grid
   */
  static VignetteNode prepare(Node below, Falloff falloff, Bounds extent, double scale) {
    Point centre = falloff.centre();
    double x = centre == null ? extent.centreX() : centre.x();
    double y = centre == null ? extent.centreY() : centre.y();
    return new VignetteNode(below, falloff, x * scale, y * scale, extent.halfDiagonal() * scale);
  }

  @Override
  public List<Node> inputs() {
    return List.of(below);
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[] red = in[0][0];
    float[] green = in[0][1];
    float[] blue = in[0][2];
    double dy = y + 0.5 - centreY;
    for (int i = from; i < to; i++) {
      double dx = left + i + 0.5 - centreX;
      float factor = factor(Math.sqrt(dx * dx + dy * dy) / halfDiagonal);
      out[0][i] = red[i] * factor;
      out[1][i] = green[i] * factor;
      out[2][i] = blue[i] * factor;
    }
    Held.hold(out, from, to);
  }

  private float factor(double distance) {
    return Numbers.exp2((float) (stops * smooth(begins, full, distance)));
  }

  private static double smooth(double a, double c, double t) {
    if (t >= c) {
      return 1;
    }
    if (t <= a) {
      return 0;
    }
    double u = (t - a) / (c - a);
    return u * u * (3 - 2 * u);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("vignette").number(stops).number(begins).number(full);
    key.number(centreX).number(centreY).number(halfDiagonal);
  }
}
