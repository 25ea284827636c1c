package org.duskply.engine.testing;

/** Values at which kernels go wrong if they go wrong. */
public final class Edges {
  private static final float[] AROUND = {
    (float) 0.0031308, (float) 0.04045, 0x1p-10f, (float) (0.18 / 256), 0.18f, 0.25f, 0.5f, 1f
  };
  private static final float[] PLAIN = {
    0f,
    -0f,
    Float.MIN_VALUE,
    -Float.MIN_VALUE,
    Float.MIN_NORMAL,
    1e-11f,
    -1e-6f,
    -0.0031308f,
    -0.01f,
    -0.25f,
    -1f,
    1.5f,
    4f,
    100f,
    65504f
  };

  private Edges() {}

  /**
   * Both zeros, denormals, negatives, values above 1 up to the greatest that a frame may hold, and
   * each threshold of a formula with the floats before and after it.
   */
  public static float[] values() {
    float[] values = new float[PLAIN.length + 3 * AROUND.length];
    System.arraycopy(PLAIN, 0, values, 0, PLAIN.length);
    int at = PLAIN.length;
    for (float threshold : AROUND) {
      values[at++] = Math.nextDown(threshold);
      values[at++] = threshold;
      values[at++] = Math.nextUp(threshold);
    }
    return values;
  }
}
