package org.duskply.engine.testing.reference;

/** The passage from 0 to 1 that has no corners. */
public final class Smooth {
  private Smooth() {}

  /** 1 at and above {@code to}, else 0 at and below {@code from}, else 3u² − 2u³. */
  public static double of(double from, double to, double t) {
    if (t >= to) {
      return 1;
    }
    if (t <= from) {
      return 0;
    }
    double u = (t - from) / (to - from);
    return 3 * u * u - 2 * u * u * u;
  }
}
