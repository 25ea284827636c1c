package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.recipe.adjust.Gel;
import org.junit.jupiter.api.Test;

/** Light through a gel. */
class GelTest extends AdjustKernelContract {
  @Override
  protected List<Case> cases() {
    return Stream.of(
            new Gel(42.0, null, null, 0),
            new Gel(-137.0, null, null, 0),
            new Gel(320.0, null, null, 50),
            new Gel(null, 3000.0, 3600.0, -8),
            new Gel(null, null, null, 5))
        .map(GelTest::filtered)
        .toList();
  }

  private static Case filtered(Gel gel) {
    double[] matrix = GelMatrix.of(gel, Working.SPACE);
    return new Case(
        gel.toString(),
        Working.kernel(gel),
        (r, g, b) -> Matrix3.apply(matrix, r, g, b),
        (in, want) -> bound(matrix, in));
  }

  /** Each coefficient, product and sum rounded once: four units of the sum of the parts. */
  private static double bound(double[] matrix, double[] in) {
    double widest = 0;
    for (int row = 0; row < 3; row++) {
      double parts = 0;
      for (int i = 0; i < 3; i++) {
        parts += Math.abs(matrix[3 * row + i] * in[i]);
      }
      widest = Math.max(widest, parts);
    }
    // The least denormal, of which each product may lose half.
    return 4 * 0x1p-24 * widest + 3 * Float.MIN_VALUE;
  }

  /** What an orange gel does: more red than blue; a blue one the reverse. */
  @Test
  void plusWarmsAndMinusCools() {
    float[][] warm = through(new Gel(42.0, null, null, 0), 0.5f, 0.5f, 0.5f);
    assertThat(warm[0][0]).isGreaterThan(warm[1][0]);
    assertThat(warm[1][0]).isGreaterThan(warm[2][0]);
    float[][] cool = through(new Gel(null, 3000.0, 3600.0, 0), 0.5f, 0.5f, 0.5f);
    assertThat(cool[0][0]).isLessThan(cool[1][0]);
    assertThat(cool[1][0]).isLessThan(cool[2][0]);
  }

  @Test
  void plusGreenIsGreenAndMinusMagenta() {
    float[][] green = through(new Gel(null, null, null, 10), 0.5f, 0.5f, 0.5f);
    assertThat(green[1][0]).isGreaterThan(green[0][0]).isGreaterThan(green[2][0]);
    float[][] magenta = through(new Gel(null, null, null, -10), 0.5f, 0.5f, 0.5f);
    assertThat(magenta[1][0]).isLessThan(magenta[0][0]).isLessThan(magenta[2][0]);
  }

  private static float[][] through(Gel gel, float red, float green, float blue) {
    float[][] p = {{red}, {green}, {blue}};
    Working.kernel(gel).run(p[0], p[1], p[2], 0, 1);
    return p;
  }
}
