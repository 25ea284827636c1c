package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Means of cells against the plain definition. */
class CellMeansTest {
  private static final int W = 23;
  private static final int H = 11;

  private static float[][][] picture(int planes) {
    Random random = new Random(3);
    float[][][] rows = new float[H][planes][W + 2];
    for (float[][] row : rows) {
      for (float[] plane : row) {
        for (int x = 0; x < plane.length; x++) {
          plane[x] = random.nextFloat() * 4 - 1;
        }
      }
      if (planes == 4) {
        for (int x = 0; x < W + 2; x++) {
          row[3][x] = random.nextInt(3) / 2f;
        }
      }
    }
    return rows;
  }

  private static double mean(float[][][] rows, int plane, int n, int cx, int cy, boolean weigh) {
    double sum = 0;
    double weight = 0;
    for (int y = cy * n; y < Math.min(H, cy * n + n); y++) {
      for (int x = cx * n; x < Math.min(W, cx * n + n); x++) {
        double w = weigh ? rows[y][3][x + 2] : 1;
        sum += w * rows[y][plane][x + 2];
        weight += w;
      }
    }
    return weight > 0 ? sum / weight : 0;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4, 5, 11, 64})
  void cellsAreMeansOfThePixelsThatAreThere(int n) {
    check(n, 3);
    check(n, 4);
  }

  private static void check(int n, int planes) {
    float[][][] rows = picture(planes);
    CellMeans means = new CellMeans(n, 0, W, H, planes);
    float[][] out = new float[planes][means.cells() + 1];
    int taken = 0;
    for (int y = 0; y < H; y++) {
      if (means.add(y, rows[y], 2)) {
        means.take(out, 1);
        for (int c = 0; c < means.cells(); c++) {
          for (int p = 0; p < planes; p++) {
            double wanted = mean(rows, p, n, c, taken, planes == 4 && p < 3);
            // Sums in double: one rounding to float on values up to 3 is all there is.
            assertThat((double) out[p][c + 1])
                .isCloseTo(wanted, org.assertj.core.data.Offset.offset(3 * 0x1p-24));
          }
        }
        taken++;
      }
    }
    assertThat(taken).isEqualTo((H - 1) / n + 1);
  }

  @Test
  void aCellWithoutCoverageIsBlackWhateverLiesUnderIt() {
    CellMeans means = new CellMeans(2, 0, 2, 2, 4);
    float[][] row = {{9, 9}, {9, 9}, {9, 9}, {0, 0}};
    means.add(0, row, 0);
    assertThat(means.add(1, row, 0)).isTrue();
    float[][] out = new float[4][1];
    means.take(out, 0);
    assertThat(out[0][0]).isEqualTo(0f);
    assertThat(out[3][0]).isEqualTo(0f);
  }

  @Test
  void aPartStartingAtACellIsThatPartOfTheWhole() {
    float[][][] rows = picture(3);
    CellMeans whole = new CellMeans(4, 0, W, H, 3);
    CellMeans part = new CellMeans(4, 8, 16, H, 3);
    float[][] all = new float[3][whole.cells()];
    float[][] some = new float[3][part.cells()];
    for (int y = 4; y < 8; y++) {
      whole.add(y, rows[y], 2);
      part.add(y, rows[y], 10);
    }
    whole.take(all, 0);
    part.take(some, 0);
    assertThat(some[1]).containsExactly(all[1][2], all[1][3]);
  }

  @Test
  void rowsMustComeInOrder() {
    CellMeans means = new CellMeans(4, 0, W, H, 3);
    float[][] row = new float[3][W];
    means.add(0, row, 0);
    assertThatThrownBy(() -> means.add(2, row, 0)).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> new CellMeans(4, 2, W, H, 3))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
