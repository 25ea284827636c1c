package org.duskply.engine.adjust;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.pixel.Segments;

/**
 * Another luminance for a pixel. Where a curve sets {@code Y → Y'},
 *
 * <pre>
 *   Y  = w₀·r + w₁·g + w₂·b
 *   g  = max(Y', 0)/max(Y, ε)     ε = 2⁻¹⁰
 *   x' = x·g + (Y' − Y·g)         on red, green and blue
 * </pre>
 *
 * <p>The luminance becomes {@code Y'}; above ε the ratios of the channels, hence the hue, are kept;
 * below, where there is hardly a hue to keep, the pixel goes towards neutral without a step, and
 * where {@code Y'} is 0 or below it is neutral. (Without the {@code max} a luminance of −1 would
 * multiply differences of its channels by −1024.) Takes any values.
 */
final class NewLuminance {
  /** Below this luminance hue fades. */
  static final float EPSILON = 0x1p-10f;

  private NewLuminance() {}

  /** How much of Y each linear channel of {@code space} gives. */
  static float[] weights(ColourSpace space) {
    double[] weights = space.luminance();
    return new float[] {(float) weights[0], (float) weights[1], (float) weights[2]};
  }

  static void run(
      float[] red, float[] green, float[] blue, int from, int to, float[] weights, Segments curve) {
    float weightOfRed = weights[0];
    float weightOfGreen = weights[1];
    float weightOfBlue = weights[2];
    for (int i = from; i < to; i++) {
      float r = red[i];
      float g = green[i];
      float b = blue[i];
      float y = weightOfRed * r + weightOfGreen * g + weightOfBlue * b;
      float wanted = curve.apply(y);
      float gain = Math.max(wanted, 0f) / Math.max(y, EPSILON);
      float rest = wanted - y * gain;
      red[i] = r * gain + rest;
      green[i] = g * gain + rest;
      blue[i] = b * gain + rest;
    }
  }
}
