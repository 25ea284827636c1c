package org.duskply.engine.adjust;

import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.pixel.Numbers;
import org.duskply.recipe.adjust.Hue;

/**
 * All colours turned, strengthened and lightened in Oklab. The change of Lab is a matrix and a
 * shift, so that the way through Lab and back is one on the cube roots of the cones:
 *
 * <pre>
 * q    = ∛(toLms·RGB)                                              sign kept
 * q'   = ROOTS_OF_LAB·T·LAB_OF_ROOTS·q + lightness·ROOTS_OF_LAB·(1, 0, 0)
 * T    = (1, 0, 0;  0, c·cos turn, −c·sin turn;  0, c·sin turn, c·cos turn)      c the chroma
 * RGB' = fromLms·q'³
 * </pre>
 *
 * <p>Errors are those of three matrix products in float, about 2⁻¹⁹ of the greatest channel.
 */
final class HueKernel implements AdjustKernel {
  private final float[] toLms;
  private final float[] fromLms;
  private final float[] change;
  private final float[] shift = new float[3];

  private HueKernel(Hue hue, Oklab oklab) {
    this.toLms = MatrixKernel.prepare(oklab.toLms());
    this.fromLms = MatrixKernel.prepare(oklab.fromLms());
    double[] roots = Oklab.rootsOfLab();
    double[] lab = Matrix3.multiply(change(hue), Oklab.labOfRoots());
    this.change = MatrixKernel.prepare(Matrix3.multiply(roots, lab));
    for (int i = 0; i < 3; i++) {
      shift[i] = (float) (hue.lightness() * roots[3 * i]);
    }
  }

  static AdjustKernel prepare(Hue hue, Oklab oklab) {
    return hue.centre() == null ? new HueKernel(hue, oklab) : HueRangeKernel.prepare(hue, oklab);
  }

  /** What becomes of Lightness, a and b. */
  private static double[] change(Hue hue) {
    double turn = StrictMath.toRadians(hue.turn());
    double along = hue.chroma() * StrictMath.cos(turn);
    double across = hue.chroma() * StrictMath.sin(turn);
    return new double[] {1, 0, 0, 0, along, -across, 0, across, along};
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    run(red, green, blue, from, to, toLms, change, shift, fromLms);
  }

  private static void run(
      float[] red,
      float[] green,
      float[] blue,
      int from,
      int to,
      float[] m,
      float[] k,
      float[] shift,
      float[] n) {
    for (int i = from; i < to; i++) {
      float r = red[i];
      float g = green[i];
      float b = blue[i];
      float q0 = Numbers.cbrt(m[0] * r + m[1] * g + m[2] * b);
      float q1 = Numbers.cbrt(m[3] * r + m[4] * g + m[5] * b);
      float q2 = Numbers.cbrt(m[6] * r + m[7] * g + m[8] * b);
      float p0 = k[0] * q0 + k[1] * q1 + k[2] * q2 + shift[0];
      float p1 = k[3] * q0 + k[4] * q1 + k[5] * q2 + shift[1];
      float p2 = k[6] * q0 + k[7] * q1 + k[8] * q2 + shift[2];
      float c0 = p0 * p0 * p0;
      float c1 = p1 * p1 * p1;
      float c2 = p2 * p2 * p2;
      red[i] = n[0] * c0 + n[1] * c1 + n[2] * c2;
      green[i] = n[3] * c0 + n[4] * c1 + n[5] * c2;
      blue[i] = n[6] * c0 + n[7] * c1 + n[8] * c2;
    }
  }
}
