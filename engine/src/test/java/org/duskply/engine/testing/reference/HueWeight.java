package org.duskply.engine.testing.reference;

/** The weight of a hue in a window, in plain double. */
public final class HueWeight {
  private HueWeight() {}

  /** 1 from {@code to} on, else 0 up to {@code from}, a cubic between. */
  public static double smooth(double from, double to, double t) {
    if (t >= to) {
      return 1;
    }
    if (t <= from) {
      return 0;
    }
    double u = (t - from) / (to - from);
    return 3 * u * u - 2 * u * u * u;
  }

  /** The weight of Oklab (a, b); angles in degrees. */
  public static double of(double centre, double width, double soft, double a, double b) {
    double chroma = Math.hypot(a, b);
    // By the angle between the two, so as not to repeat the kernel's way.
    double apart = Math.abs(Math.IEEEremainder(Math.toDegrees(Math.atan2(b, a)) - centre, 360));
    double none = Math.cos(Math.toRadians(Math.min(180, width / 2 + soft)));
    double all = Math.cos(Math.toRadians(Math.min(180, width / 2)));
    boolean every = width >= 360;
    double inside = every ? 1 : smooth(none, all, Math.cos(Math.toRadians(apart)));
    return inside * smooth(0.01, 0.03, chroma);
  }
}
