package org.duskply.engine.adjust;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Matrix3;
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
 * <p>In double from the first product to the one rounding at the end, but for the root's argument,
 * which is a float. Takes any values. Against the formula within 2⁻¹⁸ of the pixel's greatest
 * channel for factors up to 4: a root is off by 2⁻²⁴/3 of itself, the rows of the matrix between
 * sum up to 7, the cube triples, and the rows of M⁻¹ sum up to 8. Source: B. Ottosson, "A
 * perceptual color space for image processing" (2020), with the matrices of CSS Color 4.
 */
final class SaturationKernel implements AdjustKernel {
  private final double[] toCones;
  private final double[] between;
  private final double[] fromCones;

  private SaturationKernel(double[] toCones, double[] between, double[] fromCones) {
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
    return new SaturationKernel(oklab.toLms(), between, oklab.fromLms());
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    double[] m = toCones;
    double[] n = between;
    double[] k = fromCones;
    for (int i = from; i < to; i++) {
      double r = red[i];
      double g = green[i];
      double b = blue[i];
      double x = Numbers.cbrtInDouble((float) (m[0] * r + m[1] * g + m[2] * b));
      double y = Numbers.cbrtInDouble((float) (m[3] * r + m[4] * g + m[5] * b));
      double z = Numbers.cbrtInDouble((float) (m[6] * r + m[7] * g + m[8] * b));
      double u = n[0] * x + n[1] * y + n[2] * z;
      double v = n[3] * x + n[4] * y + n[5] * z;
      double w = n[6] * x + n[7] * y + n[8] * z;
      u = u * u * u;
      v = v * v * v;
      w = w * w * w;
      red[i] = (float) (k[0] * u + k[1] * v + k[2] * w);
      green[i] = (float) (k[3] * u + k[4] * v + k[5] * w);
      blue[i] = (float) (k[6] * u + k[7] * v + k[8] * w);
    }
  }
}
