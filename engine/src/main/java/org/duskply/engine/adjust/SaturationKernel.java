package org.duskply.engine.adjust;

import org.duskply.engine.colour.Oklab;
import org.duskply.engine.pixel.Numbers;
import org.duskply.recipe.adjust.Saturation;

/**
 * Distance from grey in Oklab (Ottosson 2020, matrices of CSS Color 4): a and b times a factor.
 *
 * <pre>
 * q  = ∛(toLms·RGB)               sign kept
 * L  = l₀q₀ + l₁q₁ + l₂q₂         Oklab lightness
 * q' = L + factor·(q − L)
 * RGB' = fromLms·q'³
 * </pre>
 *
 * <p>The third line is {@code (a, b) → factor·(a, b)} without going through a and b: grey has equal
 * roots, each of them L, and the way from there is linear. Errors are those of two matrix products
 * in float, about 2⁻²⁰ of the greatest channel.
 */
final class SaturationKernel implements AdjustKernel {
  private final float factor;
  private final float[] toLms;
  private final float[] fromLms;
  private final float[] lightness;

  private SaturationKernel(double factor, Oklab oklab) {
    this.factor = (float) factor;
    this.toLms = rounded(oklab.toLms());
    this.fromLms = rounded(oklab.fromLms());
    this.lightness = rounded(Oklab.labOfRoots());
  }

  static SaturationKernel prepare(Saturation saturation, Oklab oklab) {
    return new SaturationKernel(saturation.factor(), oklab);
  }

  private static float[] rounded(double[] matrix) {
    float[] to = new float[matrix.length];
    for (int i = 0; i < to.length; i++) {
      to[i] = (float) matrix[i];
    }
    return to;
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    run(red, green, blue, from, to, factor, toLms, fromLms, lightness);
  }

  // Long, because the two matrices are kept in locals: read from arrays in the loop they would be
  // loaded anew after each store.
  private static void run(
      float[] red,
      float[] green,
      float[] blue,
      int from,
      int to,
      float factor,
      float[] m,
      float[] n,
      float[] lightness) {
    float m0 = m[0], m1 = m[1], m2 = m[2];
    float m3 = m[3], m4 = m[4], m5 = m[5];
    float m6 = m[6], m7 = m[7], m8 = m[8];
    float n0 = n[0], n1 = n[1], n2 = n[2];
    float n3 = n[3], n4 = n[4], n5 = n[5];
    float n6 = n[6], n7 = n[7], n8 = n[8];
    float l0 = lightness[0], l1 = lightness[1], l2 = lightness[2];
    for (int i = from; i < to; i++) {
      float r = red[i];
      float g = green[i];
      float b = blue[i];
      float q0 = Numbers.cbrt(m0 * r + m1 * g + m2 * b);
      float q1 = Numbers.cbrt(m3 * r + m4 * g + m5 * b);
      float q2 = Numbers.cbrt(m6 * r + m7 * g + m8 * b);
      float grey = l0 * q0 + l1 * q1 + l2 * q2;
      float p0 = grey + factor * (q0 - grey);
      float p1 = grey + factor * (q1 - grey);
      float p2 = grey + factor * (q2 - grey);
      float c0 = p0 * p0 * p0;
      float c1 = p1 * p1 * p1;
      float c2 = p2 * p2 * p2;
      red[i] = n0 * c0 + n1 * c1 + n2 * c2;
      green[i] = n3 * c0 + n4 * c1 + n5 * c2;
      blue[i] = n6 * c0 + n7 * c1 + n8 * c2;
    }
  }
}
