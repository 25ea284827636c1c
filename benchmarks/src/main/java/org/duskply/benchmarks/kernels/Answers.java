package org.duskply.benchmarks.kernels;

import org.duskply.engine.testing.Close;

/**
 * Whether a kernel answers rightly at all. How exact each is, its own tests hold, by bounds that
 * are derived there; here a wrong kernel must not be timed.
 */
final class Answers {
  /**
   * What an answer may be off, absolute up to 1 and relative above: half a code of 16 bits. Each
   * kernel promises less, and no other formula comes as near.
   */
  static final double NEAR = 0.5 / 65535;

  private Answers() {}

  /** Fails unless {@code got} is {@code want} as nearly as every kernel promises. */
  static void near(Object kernel, int place, double got, double want) {
    Close.check(kernel + " at " + place, got, want, NEAR);
  }

  /** As {@link #near(Object, int, double, double)}, for the three channels of a pixel. */
  static void near(Object kernel, int place, float[][] got, double[] want) {
    for (int c = 0; c < want.length; c++) {
      near(kernel, place, got[c][place], want[c]);
    }
  }
}
