package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;

/** The pixel loop of a matrix against its formula, within its window alone. */
class MatrixKernelTest {
  private static final float GUARD = -77;

  @Test
  void everyPixelOfTheWindowIsTheFormulaInFloat() {
    double[] matrix =
        ColourSpace.matrix(ColourSpace.of(NamedSpace.SRGB), ColourSpace.of(NamedSpace.REC2020));
    float[] m = MatrixKernel.prepare(matrix);
    float[] edge = {0f, -0f, 1f, 0.5f, -0.25f, 3f, Float.MIN_VALUE, 65504f, 1e-3f};
    for (int offset = 0; offset < 3; offset++) {
      int to = offset + edge.length;
      float[][] planes = new float[3][to + 2];
      for (int i = 0; i < to + 2; i++) {
        boolean inside = i >= offset && i < to;
        for (int p = 0; p < 3; p++) {
          planes[p][i] = inside ? edge[(i - offset + 2 * p) % edge.length] : GUARD;
        }
      }
      float[][] before = {planes[0].clone(), planes[1].clone(), planes[2].clone()};
      MatrixKernel.run(planes[0], planes[1], planes[2], offset, to, m);
      for (int i = 0; i < to + 2; i++) {
        for (int p = 0; p < 3; p++) {
          boolean inside = i >= offset && i < to;
          float expected =
              inside
                  ? m[3 * p] * before[0][i]
                      + m[3 * p + 1] * before[1][i]
                      + m[3 * p + 2] * before[2][i]
                  : GUARD;
          assertThat(planes[p][i]).isEqualTo(expected);
        }
      }
    }
  }

  @Test
  void anEmptyWindowTouchesNothing() {
    float[] r = {1};
    MatrixKernel.run(r, new float[] {2}, new float[] {3}, 1, 1, new float[9]);
    assertThat(r[0]).isEqualTo(1f);
  }
}
