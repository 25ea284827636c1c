package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;
import org.duskply.recipe.mask.Ease;
import org.duskply.recipe.mask.Ramp;

/**
 * A gradient along a line: with P the centre of a pixel, {@code t = (P − from)·(to − from) / |to −
 * from|²} held to 0…1; smooth is {@code 3t² − 2t³}.
 *
 * <p>Computed in double as {@code (C + y·Y) + x·X} from the pixel's column and row on the canvas,
 * held, eased, and rounded once: the error is that of one rounding, and every rectangle gives the
 * same bits.
 */
final class GradientNode implements PointNode, Boundless {
  private final Ramp ramp;
  private final double scale;
  private final double perX;
  private final double perY;
  private final double atOrigin;

  /**
   * A gradient.
   *
   * @param scale pixels of the canvas for one of the grid
   */
  GradientNode(Ramp ramp, double scale) {
    this.ramp = ramp;
    this.scale = scale;
    double dx = ramp.to().x() - ramp.from().x();
    double dy = ramp.to().y() - ramp.from().y();
    double square = dx * dx + dy * dy;
    if (!(square > 0)) {
      throw new IllegalArgumentException("A gradient needs two positions: " + ramp);
    }
    perX = dx / square / scale;
    perY = dy / square / scale;
    // At the centre of the canvas's first pixel, half a pixel from its corner.
    atOrigin = 0.5 * (perX + perY) - (ramp.from().x() * dx + ramp.from().y() * dy) / square;
  }

  @Override
  public List<Node> inputs() {
    return List.of();
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    double start = atOrigin + y * perY;
    if (ramp.ease() == Ease.SMOOTH) {
      smooth(start, perX, out[0], left, from, to);
    } else {
      linear(start, perX, out[0], left, from, to);
    }
  }

  private static void linear(double start, double perX, float[] out, int left, int from, int to) {
    for (int i = from; i < to; i++) {
      double t = start + (left + i) * perX;
      out[i] = (float) Math.max(0, Math.min(1, t));
    }
  }

  private static void smooth(double start, double perX, float[] out, int left, int from, int to) {
    for (int i = from; i < to; i++) {
      double t = Math.max(0, Math.min(1, start + (left + i) * perX));
      out[i] = (float) (t * t * (3 - 2 * t));
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("gradient").number(scale).word(ramp.toString());
  }
}
