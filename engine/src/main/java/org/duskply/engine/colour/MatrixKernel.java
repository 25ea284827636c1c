package org.duskply.engine.colour;

/**
 * A 3×3 matrix on linear pixels, in place:
 *
 * <pre>
 *   r' = m₀·r + m₁·g + m₂·b    g' = m₃·r + m₄·g + m₅·b    b' = m₆·r + m₇·g + m₈·b
 * </pre>
 *
 * each product and sum rounded to float, from left to right. Takes any values, also outside 0…1.
 */
public final class MatrixKernel {
  private MatrixKernel() {}

  /**
   * The coefficients of the kernel, each rounded to float.
   *
   * @param matrix nine numbers row by row
   */
  public static float[] prepare(double[] matrix) {
    float[] coefficients = new float[9];
    for (int i = 0; i < 9; i++) {
      coefficients[i] = (float) matrix[i];
    }
    return coefficients;
  }

  /**
   * Applies the matrix to the pixels from {@code from} up to {@code to}.
   *
   * @param m nine coefficients row by row
   */
  public static void run(float[] r, float[] g, float[] b, int from, int to, float[] m) {
    float m0 = m[0];
    float m1 = m[1];
    float m2 = m[2];
    float m3 = m[3];
    float m4 = m[4];
    float m5 = m[5];
    float m6 = m[6];
    float m7 = m[7];
    float m8 = m[8];
    for (int i = from; i < to; i++) {
      float x = r[i];
      float y = g[i];
      float z = b[i];
      r[i] = m0 * x + m1 * y + m2 * z;
      g[i] = m3 * x + m4 * y + m5 * z;
      b[i] = m6 * x + m7 * y + m8 * z;
    }
  }
}
