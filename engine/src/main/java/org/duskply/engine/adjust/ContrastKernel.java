package org.duskply.engine.adjust;

import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;

/**
 * Contrast about a pivot in linear light, where a power is a steeper or flatter line in stops.
 *
 * <pre>
 * u  = x / pivot
 * u' = sign(u)·|u|^(1 + strength)    for |u| ≥ 2⁻⁸
 *      u·2^(−8·strength)             below: eight stops under the pivot it goes on straight
 * x' = pivot·u'
 * </pre>
 *
 * <p>On each channel, on one, or on luminance with {@link NewLuminance}. The curve is {@link
 * Segments} of {@code u}, whose corner is the end of an octave; with it and three roundings of 2⁻²⁴
 * the error is below {@code (3 + strength)·2⁻²⁴} of the value.
 */
final class ContrastKernel implements AdjustKernel {
  /** Where the straight part ends, as a share of the pivot. */
  static final double STRAIGHT_BELOW = 0x1p-8;

  private final Segments curve;
  private final float pivot;
  private final float perPivot;
  private final Channel channel;
  private final float ofRed;
  private final float ofGreen;
  private final float ofBlue;

  private ContrastKernel(Contrast contrast, double[] weights) {
    this.curve = curve(contrast.strength());
    this.pivot = (float) contrast.pivot();
    this.perPivot = (float) (1 / contrast.pivot());
    this.channel = contrast.channel();
    this.ofRed = (float) weights[0];
    this.ofGreen = (float) weights[1];
    this.ofBlue = (float) weights[2];
  }

  /**
   * The kernel of a contrast.
   *
   * @param weights of red, green and blue in luminance, summing to 1
   */
  static ContrastKernel prepare(Contrast contrast, double[] weights) {
    return new ContrastKernel(contrast, weights);
  }

  private static Segments curve(double strength) {
    double slope = StrictMath.pow(STRAIGHT_BELOW, strength);
    return Segments.of(
        u ->
            Math.abs(u) < STRAIGHT_BELOW
                ? u * slope
                : Math.copySign(StrictMath.pow(Math.abs(u), 1 + strength), u));
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    switch (channel) {
      case LUMINANCE -> runOnLuminance(red, green, blue, from, to);
      case RGB -> {
        run(red, from, to);
        run(green, from, to);
        run(blue, from, to);
      }
      case RED -> run(red, from, to);
      case GREEN -> run(green, from, to);
      case BLUE -> run(blue, from, to);
    }
  }

  private void run(float[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      v[i] = pivot * curve.apply(v[i] * perPivot);
    }
  }

  private void runOnLuminance(float[] red, float[] green, float[] blue, int from, int to) {
    for (int i = from; i < to; i++) {
      float y = ofRed * red[i] + ofGreen * green[i] + ofBlue * blue[i];
      NewLuminance.set(red, green, blue, i, y, pivot * curve.apply(y * perPivot));
    }
  }
}
