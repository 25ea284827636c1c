package org.duskply.engine.testing;

import java.util.Locale;

/**
 * The one tolerance of the tests: absolute up to 1, relative above. What fails says which value it
 * was, both numbers to nine digits, and the bound.
 */
public final class Close {
  private Close() {}

  /** Fails unless {@code got} lies within {@code bound · max(1, |wanted|)} of {@code wanted}. */
  public static void check(Object which, double got, double wanted, double bound) {
    double room = bound * Math.max(1, Math.abs(wanted));
    if (!(Math.abs(got - wanted) <= room) && Double.compare(got, wanted) != 0) {
      throw new AssertionError(
          String.format(
              Locale.ROOT,
              "[%s] %.9g, should be %.9g: %.3g apart, bound %.3g",
              which,
              got,
              wanted,
              Math.abs(got - wanted),
              room));
    }
  }

  /** {@link #check(Object, double, double, double)} on each pair of values. */
  public static void check(float[] got, double[] wanted, double bound) {
    if (got.length != wanted.length) {
      throw new AssertionError(got.length + " values, should be " + wanted.length);
    }
    for (int i = 0; i < got.length; i++) {
      check(i, got[i], wanted[i], bound);
    }
  }

  /** Fails unless both are the same bits; −0 and 0 count as the same, as in a picture's hash. */
  public static void sameBits(float[] got, float[] wanted) {
    if (got.length != wanted.length) {
      throw new AssertionError(got.length + " values, should be " + wanted.length);
    }
    for (int i = 0; i < got.length; i++) {
      if (Float.floatToIntBits(got[i] + 0f) != Float.floatToIntBits(wanted[i] + 0f)) {
        throw new AssertionError(
            String.format(Locale.ROOT, "[%d] %.9g, should be %.9g", i, got[i], wanted[i]));
      }
    }
  }
}
