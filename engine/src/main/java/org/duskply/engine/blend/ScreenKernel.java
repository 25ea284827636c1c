package org.duskply.engine.blend;

/**
 * Both pictures' light, thinned so that two values up to white stay below it: {@code b + s − b·s}
 * (W3C Compositing and Blending 1, {@code screen}). Where either is above 1, which the standard
 * does not know, the greater of the two; below 0 they count as 0.
 *
 * <p>Written as {@code b + (s − b·s)}, which in float keeps the identities exact: screening with 0
 * changes no bit, with 1 gives 1. Held to at least the greater of the two, it is both rules in one
 * formula without a branch: with {@code b} or {@code s} cut to 1 it is 1.
 */
final class ScreenKernel implements SeparableKernel {
  @Override
  public void run(float[] below, float[] frame, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = screen(Math.max(below[i], 0f), Math.max(frame[i], 0f));
    }
  }

  /** Screens two values of 0 or more. */
  static float screen(float b, float s) {
    float bUpToWhite = Math.min(b, 1f);
    float sUpToWhite = Math.min(s, 1f);
    float screen = bUpToWhite + (sUpToWhite - bUpToWhite * sUpToWhite);
    return Math.max(screen, Math.max(b, s));
  }
}
