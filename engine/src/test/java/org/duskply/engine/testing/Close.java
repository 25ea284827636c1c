package org.duskply.engine.testing;

import java.util.Locale;

/** The one tolerance of tests: absolute up to 1, relative above. */
public final class Close {
  private Close() {}

  /** Fails unless {@code got} is within {@code tolerance} of {@code want}. */
  public static void check(String what, double got, double want, double tolerance) {
    within(what, got, want, tolerance * Math.max(1, Math.abs(want)));
  }

  /** Fails unless {@code got} is within {@code bound} of {@code want}, both as they are. */
  public static void within(String what, double got, double want, double bound) {
    if (!(Math.abs(got - want) <= bound)) {
      throw new AssertionError(
          String.format(
              Locale.ROOT,
              "%s: got %.9g, want %.9g, off by %.3g where %.3g is allowed",
              what,
              got,
              want,
              Math.abs(got - want),
              bound));
    }
  }

  /** Fails at the first sample that is not within {@code tolerance}. */
  public static void check(String what, float[] got, double[] want, double tolerance) {
    if (got.length != want.length) {
      throw new AssertionError(what + ": " + got.length + " samples, want " + want.length);
    }
    for (int i = 0; i < want.length; i++) {
      check(what + " [" + i + "]", got[i], want[i], tolerance);
    }
  }
}
