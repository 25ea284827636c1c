package org.duskply.engine.pixel;

/**
 * Keeps light within ±2⁴⁸, 3·10¹⁴ times white: far above what a lamp is, and so far below the end
 * of float that no operation can reach it from there. So nothing on the way through any steps
 * becomes infinite, nor, one step later, no number. Whatever may multiply light holds its result.
 */
public final class Held {
  /** The brightest light. */
  public static final float MOST = 0x1p48f;

  private Held() {}

  /** Holds values {@code from} up to {@code to}. */
  public static void hold(float[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      v[i] = Math.max(-MOST, Math.min(MOST, v[i]));
    }
  }

  /** Holds pixels {@code from} up to {@code to} of three planes. */
  public static void hold(float[][] planes, int from, int to) {
    for (int p = 0; p < 3; p++) {
      hold(planes[p], from, to);
    }
  }
}
