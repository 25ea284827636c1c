package org.duskply.engine.adjust;

/**
 * Sets a pixel's luminance from {@code Y} to {@code Y'}:
 *
 * <pre>
 * g  = max(Y', 0) / max(Y, 2⁻¹⁰)
 * x' = x·g + (Y' − Y·g)      on red, green and blue
 * </pre>
 *
 * <p>The new luminance is exact, whatever the old one; hue and saturation stay where {@code Y} is
 * above 2⁻¹⁰, and below it the change is neutral, so that noise in black is not made colourful.
 * Where {@code Y'} is 0 or below, the pixel is neutral: a negative gain would turn hues about, and
 * at a luminance of −1 multiply them by 1,024.
 */
public final class NewLuminance {
  /** The luminance below which a change is neutral. */
  public static final float NEUTRAL_BELOW = 0x1p-10f;

  // So near the end of float, y times the gain could round to infinity.
  private static final float BRIGHTEST = 0x1p126f;

  private NewLuminance() {}

  /** Sets pixel {@code i}, whose luminance is {@code y}, to {@code wanted}. */
  public static void set(float[] red, float[] green, float[] blue, int i, float y, float wanted) {
    float light = Math.min(wanted, BRIGHTEST);
    float gain = Math.max(light, 0f) / Math.max(y, NEUTRAL_BELOW);
    float shift = light - y * gain;
    red[i] = red[i] * gain + shift;
    green[i] = green[i] * gain + shift;
    blue[i] = blue[i] * gain + shift;
  }
}
