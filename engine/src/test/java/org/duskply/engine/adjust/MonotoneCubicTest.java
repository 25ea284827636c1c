package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.duskply.engine.testing.Sequence;
import org.duskply.engine.testing.reference.ReferenceCurve;
import org.junit.jupiter.api.Test;

/** Fritsch and Butland's slopes and the cubic through them. */
class MonotoneCubicTest {
  private static final double[] PLACES = {
    0.05, 0.125, 0.2, 0.35, 0.45, 0.55, 0.625, 0.8, 0.9, 0.95
  };

  private static void check(double[] x, double[] y, double[] slopes, double[] values) {
    MonotoneCubic cubic = new MonotoneCubic(x, y);
    for (int i = 0; i < x.length; i++) {
      assertThat(cubic.slope(i)).isCloseTo(slopes[i], within(1e-10));
      assertThat(cubic.at(x[i])).isEqualTo(y[i]);
    }
    for (int i = 0; i < PLACES.length; i++) {
      assertThat(cubic.at(PLACES[i])).isCloseTo(values[i], within(0.6e-9));
    }
  }

  // Fritsch and Butland 1984 as SciPy's PchipInterpolator computes it, printed to nine decimals.

  @Test
  void caseA() {
    check(
        new double[] {0, 0.25, 0.5, 0.75, 1},
        new double[] {0, 0.15, 0.5, 0.85, 1},
        new double[] {0.2, 0.84, 1.4, 0.84, 0.2},
        new double[] {
          0.01528, 0.055, 0.10912, 0.26984, 0.42552, 0.57448, 0.6925, 0.89088, 0.96016, 0.98472
        });
  }

  @Test
  void caseBWithAFlatPiece() {
    check(
        new double[] {0, 0.1, 0.3, 0.7, 1},
        new double[] {0, 0.05, 0.05, 0.9, 1},
        new double[] {0.6666666667, 0, 0, 0.5569422777, 0},
        new double[] {
          0.033333333,
          0.05,
          0.05,
          0.083477659,
          0.299365311,
          0.598421351,
          0.793982448,
          0.950678916,
          0.986450569,
          0.996460247
        });
  }

  @Test
  void caseCThatNaturalSplinesOvershoot() {
    check(
        new double[] {0, 0.4, 0.5, 0.6, 1},
        new double[] {0, 0.02, 0.5, 0.98, 1},
        new double[] {0, 0.1230769231, 4.8, 0.1230769231, 0},
        new double[] {
          0.000186298,
          0.001333383,
          0.003846154,
          0.014429087,
          0.201538462,
          0.798461538,
          0.982928936,
          0.996153846,
          0.999182692,
          0.999813702
        });
  }

  @Test
  void risingPointsGiveARisingCurveThatTheOtherFormOfItFollows() {
    Sequence sequence = new Sequence(11);
    for (int trial = 0; trial < 200; trial++) {
      int count = 2 + trial % 9;
      double[] x = new double[count];
      double[] y = new double[count];
      for (int i = 1; i < count; i++) {
        x[i] = x[i - 1] + 0.01 + sequence.next();
        y[i] = y[i - 1] + Math.max(0, sequence.next() - 0.3);
      }
      MonotoneCubic cubic = new MonotoneCubic(x, y);
      ReferenceCurve reference = new ReferenceCurve(x, y);
      double last = y[0];
      for (int i = 0; i <= 1000; i++) {
        double v = Math.min(x[count - 1], x[count - 1] * i / 1000);
        double at = cubic.at(v);
        assertThat(at).isGreaterThanOrEqualTo(last - 1e-15);
        assertThat(at).isCloseTo(reference.at(v), within(1e-12));
        last = at;
      }
      assertThat(Arrays.stream(y).max().orElseThrow()).isEqualTo(cubic.at(x[count - 1]));
    }
  }

  @Test
  void twoPointsAreALineAndADiagonalIsItself() {
    MonotoneCubic line = new MonotoneCubic(new double[] {0.2, 0.7}, new double[] {0.1, 0.9});
    MonotoneCubic diagonal =
        new MonotoneCubic(new double[] {0, 0.1, 0.7, 1}, new double[] {0, 0.1, 0.7, 1});
    for (int i = 0; i <= 100; i++) {
      double v = 0.2 + 0.005 * i;
      assertThat(line.at(v)).isCloseTo(0.1 + 1.6 * (v - 0.2), within(1e-15));
      assertThat(diagonal.at(v)).isCloseTo(v, within(1e-15));
    }
  }
}
