package org.duskply.engine.deliver;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.EncodeCurve;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * From linear working values to the integer codes of a file:
 *
 * <pre>
 *   x' = M·x                        M: linear working → linear target; left out where the primaries are the same
 *   x″ = 0 below 0 and for NaN, 1 above 1
 *   code = ⌊E(x″)·maximum + r⌋      E: the target's curve; maximum 255 or 65535; product and sum in float;
 *                                   r: see {@link Rounding}
 * </pre>
 *
 * <p>Every code of a named space that was decoded to a linear float comes back as itself.
 *
 * <p>A pixel counts as clipped when one of its channels lies outside what the file can hold by more
 * than half a code: encoded, by the curve continued above 1 and odd below 0, under −½/maximum or
 * over 1 + ½/maximum. A curve that is steep at black puts the first of these closer to 0 than a
 * matrix in float can tell, so the linear bound is held at {@value #NOISE} or further.
 */
final class OutputColour {
  /**
   * 2⁻¹⁹: more than a row of the matrix can err by. With values up to 1, coefficients up to 2 and u
   * = 2⁻²⁴ for each rounding: three values, coefficients and products of 2u each, and two sums up
   * to 4 and 6, are 3·(2 + 2 + 2)u + 4u + 6u = 28u < 32u.
   */
  private static final double NOISE = 0x1p-19;

  /** Each takes some milliseconds to prepare and is needed by every file. */
  private static final Map<NamedSpace, EncodeCurve> CURVES = new ConcurrentHashMap<>();

  private final float @Nullable [] matrix;
  private final EncodeCurve curve;
  private final float maximum;
  private final float low;
  private final float high;

  private OutputColour(float @Nullable [] matrix, NamedSpace target, float maximum) {
    TransferCurve curve = ColourSpace.of(target).curve(0);
    this.matrix = matrix;
    this.curve = CURVES.computeIfAbsent(target, t -> EncodeCurve.of(curve));
    this.maximum = maximum;
    double half = 0.5 / maximum;
    this.low = (float) -Math.max(curve.toLinear(half), NOISE);
    this.high = (float) curve.toLinear(1 + half);
  }

  /**
   * The way out.
   *
   * @param working space of the linear values
   * @param target space of the file
   * @param depth 8 or 16
   */
  static OutputColour of(ColourSpace working, NamedSpace target, int depth) {
    ColourSpace to = ColourSpace.of(target);
    float[] matrix =
        working.samePrimaries(to) ? null : MatrixKernel.prepare(ColourSpace.matrix(working, to));
    return new OutputColour(matrix, target, (1 << depth) - 1);
  }

  /**
   * The codes of some pixels.
   *
   * @param r linear red, and so on; used up
   * @param count how many pixels, from column 0 of the file
   * @param rounding the row's, of {@link Rounding#row}
   * @param codes takes 3·count unsigned codes: R, G, B of a pixel together
   * @return how many pixels were clipped
   */
  int codes(float[] r, float[] g, float[] b, int count, float[] rounding, short[] codes) {
    if (matrix != null) {
      MatrixKernel.run(r, g, b, 0, count, matrix);
    }
    int clipped = countOutside(r, g, b, count);
    channel(r, count, rounding, codes, 0);
    channel(g, count, rounding, codes, 1);
    channel(b, count, rounding, codes, 2);
    return clipped;
  }

  private int countOutside(float[] r, float[] g, float[] b, int count) {
    float low = this.low;
    float high = this.high;
    int outside = 0;
    for (int i = 0; i < count; i++) {
      float least = Math.min(r[i], Math.min(g[i], b[i]));
      float most = Math.max(r[i], Math.max(g[i], b[i]));
      outside += least < low || most > high ? 1 : 0;
    }
    return outside;
  }

  private void channel(float[] v, int count, float[] rounding, short[] codes, int offset) {
    for (int i = 0; i < count; i++) {
      float x = v[i];
      v[i] = x > 0 ? Math.min(x, 1) : 0; // NaN is not above 0
    }
    curve.apply(v, 0, count);
    float maximum = this.maximum;
    int mask = rounding.length - 1;
    for (int i = 0; i < count; i++) {
      codes[BandLayout.CHANNELS * i + offset] = (short) (int) (v[i] * maximum + rounding[i & mask]);
    }
  }
}
