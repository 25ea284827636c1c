package org.duskply.engine.adjust;

import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Held;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;

/**
 * A color decision list with saturation (ASC CDL 1.2): {@link CdlTones}, then on the same axis
 *
 * <pre>
 * Y  = 0.2126·r + 0.7152·g + 0.0722·b      the standard's own weights, whatever the working space
 * v' = Y + saturation·(v − Y), held to 0…1 where it clamps
 * </pre>
 *
 * <p>then back from the axis. Errors are those of the tables, and four roundings of the greatest of
 * the three and their luma times {@code 1 + 2·saturation}.
 */
final class CdlKernel implements AdjustKernel {
  private static final float OF_RED = 0.2126f;
  private static final float OF_GREEN = 0.7152f;
  private static final float OF_BLUE = 0.0722f;

  private final Segments[] red;
  private final Segments[] green;
  private final Segments[] blue;
  private final float saturation;
  private final boolean clamp;
  private final boolean encoded;

  private CdlKernel(Cdl cdl) {
    this.red = Tone.there(CdlTones.of(cdl, 0), cdl.axis());
    this.green = Tone.there(CdlTones.of(cdl, 1), cdl.axis());
    this.blue = Tone.there(CdlTones.of(cdl, 2), cdl.axis());
    this.saturation = (float) cdl.saturation();
    this.clamp = cdl.clamp();
    this.encoded = cdl.axis() == Axis.ENCODED;
  }

  static CdlKernel prepare(Cdl cdl) {
    return new CdlKernel(cdl);
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    toAxis(this.red, red, from, to);
    toAxis(this.green, green, from, to);
    toAxis(this.blue, blue, from, to);
    saturate(red, green, blue, from, to, saturation);
    fromAxis(red, from, to);
    fromAxis(green, from, to);
    fromAxis(blue, from, to);
  }

  private static void toAxis(Segments[] tones, float[] channel, int from, int to) {
    for (Segments table : tones) {
      table.apply(channel, from, to);
    }
    Held.hold(channel, from, to);
  }

  private static void saturate(
      float[] red, float[] green, float[] blue, int from, int to, float saturation) {
    for (int i = from; i < to; i++) {
      float luma = OF_RED * red[i] + OF_GREEN * green[i] + OF_BLUE * blue[i];
      red[i] = luma + saturation * (red[i] - luma);
      green[i] = luma + saturation * (green[i] - luma);
      blue[i] = luma + saturation * (blue[i] - luma);
    }
  }

  private void fromAxis(float[] channel, int from, int to) {
    if (clamp) {
      hold(channel, from, to);
    }
    if (encoded) {
      Encoded.decode(channel, from, to);
    }
  }

  private static void hold(float[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      v[i] = Math.max(0f, Math.min(1f, v[i]));
    }
  }
}
