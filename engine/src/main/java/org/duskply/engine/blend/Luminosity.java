package org.duskply.engine.blend;

/**
 * The helpers of W3C Compositing and Blending 1, #blendingnonseparable, for values of 0 or more.
 *
 * <pre>
 * Lum(C)       = 0.3·R + 0.59·G + 0.11·B
 * Sat(C)       = max(C) − min(C)
 * SetLum(C, l) = C + (l − Lum(C)), then ClipColor:
 *                where min(C) &lt; 0: C = l + (C − l)·l/(l − min(C))
 *                where max(C) &gt; w: C = l + (C − l)·(w − l)/(max(C) − l)
 * w            = 1 + 4·(m − 1) where the greatest channel m of the two pictures is above 1, else 1
 * </pre>
 *
 * <p>The weights are the standard's own, whatever the working space. So is the clip at 1 as long as
 * both pictures stay below it. Above, which the standard does not know, light must not be lost:
 * from m = 1.5 on, w is beyond what any mode reaches (2·m) and nothing is clipped; between, w goes
 * there without a jump. The luminance of a colour that has been moved is the one that it has been
 * moved to, since the weights sum to 1, so {@code l} stands for it.
 *
 * <p>Errors: the moved channels carry a few roundings of the greatest value; a clip, whose quotient
 * is at most 1 and in which no channel is further from {@code l} than 0.89/0.11 times as far as the
 * one that is clipped, makes at most ten times that.
 */
final class Luminosity {
  private static final float RED = 0.3f;
  private static final float GREEN = 0.59f;
  private static final float BLUE = 0.11f;

  private Luminosity() {}

  static float of(float r, float g, float b) {
    return RED * r + GREEN * g + BLUE * b;
  }

  static float greatest(float r, float g, float b) {
    return Math.max(r, Math.max(g, b));
  }

  static float least(float r, float g, float b) {
    return Math.min(r, Math.min(g, b));
  }

  /**
   * The most that a channel of the result may have.
   *
   * @param m the greatest channel of the two pictures
   */
  static float white(float m) {
    return 1f + 4f * Math.max(m - 1f, 0f);
  }

  /** Writes a colour at another luminosity to pixel {@code i} of {@code out}. */
  static void setLuminosity(
      float r, float g, float b, float wanted, float white, float[][] out, int i) {
    float shift = wanted - of(r, g, b);
    float red = r + shift;
    float green = g + shift;
    float blue = b + shift;
    float least = least(red, green, blue);
    if (least < 0f) {
      float share = wanted / (wanted - least);
      // The least becomes 0, which rounding may miss.
      red = Math.max(wanted + (red - wanted) * share, 0f);
      green = Math.max(wanted + (green - wanted) * share, 0f);
      blue = Math.max(wanted + (blue - wanted) * share, 0f);
    }
    float greatest = greatest(red, green, blue);
    if (greatest > white) {
      float share = Math.max(white - wanted, 0f) / (greatest - wanted);
      red = Math.min(wanted + (red - wanted) * share, white);
      green = Math.min(wanted + (green - wanted) * share, white);
      blue = Math.min(wanted + (blue - wanted) * share, white);
    }
    out[0][i] = red;
    out[1][i] = green;
    out[2][i] = blue;
  }

  /**
   * Writes a colour at another saturation and luminosity to pixel {@code i} of {@code out}. Each
   * channel's place between the least and the greatest, 0 to 1, stays; a grey has none and stays
   * grey.
   */
  static void setSaturationAndLuminosity(
      float r,
      float g,
      float b,
      float saturation,
      float wanted,
      float white,
      float[][] out,
      int i) {
    float least = least(r, g, b);
    float range = greatest(r, g, b) - least;
    if (range == 0f) {
      setLuminosity(0f, 0f, 0f, wanted, white, out, i);
      return;
    }
    // Divided first: the quotient is at most 1, however small the range.
    float red = (r - least) / range * saturation;
    float green = (g - least) / range * saturation;
    float blue = (b - least) / range * saturation;
    setLuminosity(red, green, blue, wanted, white, out, i);
  }
}
