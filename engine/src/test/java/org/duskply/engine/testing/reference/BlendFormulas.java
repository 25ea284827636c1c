package org.duskply.engine.testing.reference;

import org.duskply.recipe.step.Blend;

/**
 * W3C Compositing and Blending 1, #blendingseparable and #blendingnonseparable, continued above 1
 * and below 0 by the project's own extension, which is the standard from 0 to 1.
 */
public final class BlendFormulas {
  private BlendFormulas() {}

  /** A mode on one colour. */
  public static double[] of(Blend mode, double[] below, double[] frame) {
    if (ofColours(mode)) {
      return colours(mode, held(below), held(frame));
    }
    double[] out = new double[3];
    for (int c = 0; c < 3; c++) {
      out[c] = of(mode, below[c], frame[c]);
    }
    return out;
  }

  /** A mode on the encoded axis, taken back to light. */
  public static double[] encoded(Blend mode, double[] below, double[] frame) {
    double[] b = new double[3];
    double[] f = new double[3];
    for (int c = 0; c < 3; c++) {
      b[c] = EncodedAxis.encode(below[c]);
      f[c] = EncodedAxis.encode(frame[c]);
    }
    double[] out = of(mode, b, f);
    for (int c = 0; c < 3; c++) {
      out[c] = EncodedAxis.decode(out[c]);
    }
    return out;
  }

  /** Whether a mode looks at all three channels at once. */
  public static boolean ofColours(Blend mode) {
    return mode == Blend.HUE
        || mode == Blend.SATURATION
        || mode == Blend.COLOR
        || mode == Blend.LUMINOSITY;
  }

  /** A separable mode on one channel. */
  public static double of(Blend mode, double below, double frame) {
    double b = Math.max(below, 0);
    double s = Math.max(frame, 0);
    return switch (mode) {
      case NORMAL -> frame;
      case MULTIPLY -> below * frame;
      case DARKEN -> below < frame ? below : frame;
      case LIGHTEN -> below > frame ? below : frame;
      case DIFFERENCE -> below > frame ? below - frame : frame - below;
      case PLUS_LIGHTER -> below + frame;
      case SCREEN -> screen(b, s);
      case HARD_LIGHT -> hardLight(b, s);
      case OVERLAY -> hardLight(s, b);
      case COLOR_DODGE -> colorDodge(b, s);
      case COLOR_BURN -> colorBurn(b, s);
      case SOFT_LIGHT -> b >= 1 ? b : softLight(b, Math.min(s, 1));
      case EXCLUSION -> b <= 1 && s <= 1 ? b + s - 2 * b * s : Math.abs(b - s);
      case HUE, SATURATION, COLOR, LUMINOSITY ->
          throw new IllegalArgumentException(mode + " is not separable");
    };
  }

  private static double screen(double b, double s) {
    return b <= 1 && s <= 1 ? b + s - b * s : Math.max(b, s);
  }

  private static double hardLight(double b, double s) {
    return s <= 0.5 ? b * 2 * s : screen(b, 2 * s - 1);
  }

  private static double colorDodge(double b, double s) {
    if (b == 0) {
      return 0;
    }
    return b >= 1 ? b : s >= 1 ? 1 : Math.min(1, b / (1 - s));
  }

  private static double colorBurn(double b, double s) {
    if (b >= 1) {
      return b;
    }
    return s == 0 ? 0 : 1 - Math.min(1, (1 - b) / Math.min(s, 1));
  }

  private static double softLight(double b, double s) {
    if (s <= 0.5) {
      return b - (1 - 2 * s) * b * (1 - b);
    }
    double d = b <= 0.25 ? ((16 * b - 12) * b + 4) * b : StrictMath.sqrt(b);
    return b + (2 * s - 1) * (d - b);
  }

  private static double[] colours(Blend mode, double[] b, double[] s) {
    double m = Math.max(greatest(b), greatest(s));
    double white = m <= 1 ? 1 : 1 + 4 * (m - 1);
    return switch (mode) {
      case HUE -> setLum(setSat(s, sat(b)), lum(b), white);
      case SATURATION -> setLum(setSat(b, sat(s)), lum(b), white);
      case COLOR -> setLum(s, lum(b), white);
      default -> setLum(b, lum(s), white);
    };
  }

  private static double[] held(double[] c) {
    return new double[] {Math.max(c[0], 0), Math.max(c[1], 0), Math.max(c[2], 0)};
  }

  /** The standard's luminosity. */
  public static double lum(double[] c) {
    return 0.3 * c[0] + 0.59 * c[1] + 0.11 * c[2];
  }

  private static double sat(double[] c) {
    return greatest(c) - least(c);
  }

  private static double greatest(double[] c) {
    return Math.max(c[0], Math.max(c[1], c[2]));
  }

  private static double least(double[] c) {
    return Math.min(c[0], Math.min(c[1], c[2]));
  }

  private static double[] setLum(double[] c, double l, double white) {
    double d = l - lum(c);
    double[] moved = {c[0] + d, c[1] + d, c[2] + d};
    double n = least(moved);
    double[] above = n < 0 ? pulled(moved, l, l / (l - n)) : moved;
    double x = greatest(above);
    return x > white ? pulled(above, l, (white - l) / (x - l)) : above;
  }

  /** A colour drawn towards the grey of its luminosity. */
  private static double[] pulled(double[] c, double l, double share) {
    return new double[] {l + (c[0] - l) * share, l + (c[1] - l) * share, l + (c[2] - l) * share};
  }

  private static double[] setSat(double[] c, double s) {
    double n = least(c);
    double x = greatest(c);
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      out[i] = x > n ? (c[i] - n) * s / (x - n) : 0;
    }
    return out;
  }
}
