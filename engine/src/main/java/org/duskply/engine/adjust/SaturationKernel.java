package org.duskply.engine.adjust;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.pixel.Numbers;
import org.duskply.recipe.adjust.Saturation;

/**
 * Distance from grey in Oklab, a and b times a factor:
 *
 * <pre>
 *   q   = ∛(M·rgb)                    M to the cone responses, signs kept by the root
 *   q'  = N⁻¹·diag(1, s, s)·N·q       N to Oklab; one matrix, prepared
 *   rgb = M⁻¹·q'³
 * </pre>
 *
 * <p>Takes any values. Against the formula in double, within 2⁻¹⁸ of the pixel's greatest channel
 * for factors up to 4: cubing triples the root's rounding, and M⁻¹ adds and takes away several
 * times the answer. Source: B. Ottosson, "A perceptual color space for image processing" (2020),
 * with the matrices of CSS Color 4.
 */
final class SaturationKernel implements AdjustKernel {
  private final float[] toCones;
  private final float[] between;
  private final float[] fromCones;

  private SaturationKernel(float[] toCones, float[] between, float[] fromCones) {
    this.toCones = toCones;
    this.between = between;
    this.fromCones = fromCones;
  }

  static boolean identity(Saturation saturation) {
    return saturation.factor() == 1;
  }

  static SaturationKernel prepare(Saturation saturation, ColourSpace working) {
    Oklab oklab = Oklab.of(working);
    double s = saturation.factor();
    double[] between =
        Matrix3.multiply(
            Oklab.rootsOfLab(), Matrix3.multiply(Matrix3.diagonal(1, s, s), Oklab.labOfRoots()));
    return new SaturationKernel(
        MatrixKernel.prepare(oklab.toLms()),
        MatrixKernel.prepare(between),
        MatrixKernel.prepare(oklab.fromLms()));
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    MatrixKernel.run(red, green, blue, from, to, toCones);
    root(red, from, to);
    root(green, from, to);
    root(blue, from, to);
    MatrixKernel.run(red, green, blue, from, to, between);
    cube(red, from, to);
    cube(green, from, to);
    cube(blue, from, to);
    MatrixKernel.run(red, green, blue, from, to, fromCones);
  }

  private static void root(float[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      v[i] = Numbers.cbrt(v[i]);
    }
  }

  private static void cube(float[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      float x = v[i];
      v[i] = x * x * x;
    }
  }
}
