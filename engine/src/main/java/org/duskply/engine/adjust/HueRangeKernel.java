package org.duskply.engine.adjust;

import java.util.Objects;
import org.duskply.engine.colour.HueWindow;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.pixel.Numbers;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Hue;

/**
 * The colours of a range of hues turned, strengthened and lightened in Oklab, each by its weight w
 * in a {@link HueWindow}:
 *
 * <pre>
 * k  = 1 + (chroma − 1)·w          φ = turn·w
 * a' = k·(a·cos φ − b·sin φ)
 * b' = k·(a·sin φ + b·cos φ)
 * L' = L + lightness·w
 * </pre>
 *
 * <p>A colour of weight 0 keeps its very bits. Cosine and sine are {@link Segments} of w. Errors
 * are those of four matrix products in float, about 2⁻¹⁹ of the greatest channel, and of the
 * weight.
 */
final class HueRangeKernel implements AdjustKernel {
  private final HueWindow window;
  private final Segments cosine;
  private final Segments sine;
  private final float chroma;
  private final float lightness;
  private final float[] toLms;
  private final float[] labOfRoots;
  private final float[] rootsOfLab;
  private final float[] fromLms;

  private HueRangeKernel(Hue hue, HueWindow window, Oklab oklab) {
    double turn = StrictMath.toRadians(hue.turn());
    this.window = window;
    this.cosine = Segments.of(w -> StrictMath.cos(turn * share(w)));
    this.sine = Segments.of(w -> StrictMath.sin(turn * share(w)));
    this.chroma = (float) (hue.chroma() - 1);
    this.lightness = (float) hue.lightness();
    this.toLms = MatrixKernel.prepare(oklab.toLms());
    this.labOfRoots = MatrixKernel.prepare(Oklab.labOfRoots());
    this.rootsOfLab = MatrixKernel.prepare(Oklab.rootsOfLab());
    this.fromLms = MatrixKernel.prepare(oklab.fromLms());
  }

  /**
   * The kernel.
   *
   * @param hue with a centre and a width
   */
  static HueRangeKernel prepare(Hue hue, Oklab oklab) {
    double centre = Objects.requireNonNull(hue.centre());
    double width = Objects.requireNonNull(hue.width());
    return new HueRangeKernel(hue, HueWindow.of(oklab, centre, width, hue.soft()), oklab);
  }

  /** Weights run from 0 to 1; a table is made for every float. */
  private static double share(double w) {
    return Math.max(0, Math.min(1, w));
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    run(red, green, blue, from, to, toLms, labOfRoots, rootsOfLab, fromLms);
  }

  // Long, because a pixel that is left alone must not have been written on the way.
  private void run(
      float[] red,
      float[] green,
      float[] blue,
      int from,
      int to,
      float[] m,
      float[] l,
      float[] k,
      float[] n) {
    for (int i = from; i < to; i++) {
      float r = red[i];
      float g = green[i];
      float b = blue[i];
      float q0 = Numbers.cbrt(m[0] * r + m[1] * g + m[2] * b);
      float q1 = Numbers.cbrt(m[3] * r + m[4] * g + m[5] * b);
      float q2 = Numbers.cbrt(m[6] * r + m[7] * g + m[8] * b);
      float labA = l[3] * q0 + l[4] * q1 + l[5] * q2;
      float labB = l[6] * q0 + l[7] * q1 + l[8] * q2;
      float w = window.weight(labA, labB);
      if (w == 0) {
        continue;
      }
      float strength = 1 + chroma * w;
      float along = strength * cosine.apply(w);
      float across = strength * sine.apply(w);
      float light = l[0] * q0 + l[1] * q1 + l[2] * q2 + lightness * w;
      float newA = labA * along - labB * across;
      float newB = labA * across + labB * along;
      float p0 = k[0] * light + k[1] * newA + k[2] * newB;
      float p1 = k[3] * light + k[4] * newA + k[5] * newB;
      float p2 = k[6] * light + k[7] * newA + k[8] * newB;
      float c0 = p0 * p0 * p0;
      float c1 = p1 * p1 * p1;
      float c2 = p2 * p2 * p2;
      red[i] = n[0] * c0 + n[1] * c1 + n[2] * c2;
      green[i] = n[3] * c0 + n[4] * c1 + n[5] * c2;
      blue[i] = n[6] * c0 + n[7] * c1 + n[8] * c2;
    }
  }
}
