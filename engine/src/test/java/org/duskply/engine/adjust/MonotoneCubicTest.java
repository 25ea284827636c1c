package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.HermiteCurve;
import org.junit.jupiter.api.Test;

/**
 * Fritsch and Butland 1984: slopes and values computed with another implementation of the paper (a
 * general scientific library's), ten and nine digits printed.
 */
class MonotoneCubicTest {
  private static final double PRINTED = 6e-10;
  private static final double[] AT = {0.05, 0.125, 0.2, 0.35, 0.45, 0.55, 0.625, 0.8, 0.9, 0.95};

  private static void check(double[] x, double[] y, double[] slopes, double[] values) {
    MonotoneCubic curve = new MonotoneCubic(x, y);
    for (int i = 0; i < x.length; i++) {
      Close.within("slope " + i, curve.slopes()[i], slopes[i], PRINTED);
      Close.within("own slope " + i, HermiteCurve.slope(x, y, i), slopes[i], PRINTED);
      assertThat(curve.applyAsDouble(x[i])).isEqualTo(y[i]);
    }
    for (int i = 0; i < AT.length; i++) {
      Close.within("at " + AT[i], curve.applyAsDouble(AT[i]), values[i], PRINTED);
      Close.within("own at " + AT[i], HermiteCurve.at(x, y, AT[i]), values[i], PRINTED);
    }
  }

  @Test
  void gentleS() {
    check(
        new double[] {0, 0.25, 0.5, 0.75, 1},
        new double[] {0, 0.15, 0.5, 0.85, 1},
        new double[] {0.2, 0.84, 1.4, 0.84, 0.2},
        new double[] {
          0.01528, 0.055, 0.10912, 0.26984, 0.42552, 0.57448, 0.6925, 0.89088, 0.96016, 0.98472
        });
  }

  @Test
  void flatThenSteep() {
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
  void step() {
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
  void neverFallsAndKeepsTheDiagonal() {
    MonotoneCubic steep =
        new MonotoneCubic(
            new double[] {0.1, 0.3, 0.31, 0.6, 0.9}, new double[] {0, 0, 0.7, 0.7, 0.75});
    double last = Double.NEGATIVE_INFINITY;
    for (int n = -1000; n <= 20_000; n++) {
      double y = steep.applyAsDouble(n / 10_000.0);
      // A flat piece is a difference of equal numbers times zero, exact here; no slack is needed.
      assertThat(y).isGreaterThanOrEqualTo(last);
      last = y;
    }
    MonotoneCubic diagonal =
        new MonotoneCubic(new double[] {0, 0.2, 0.7, 1}, new double[] {0, 0.2, 0.7, 1});
    for (int n = -1000; n <= 3000; n++) {
      Close.within("diagonal", diagonal.applyAsDouble(n / 1000.0), n / 1000.0, 2e-15);
    }
  }

  @Test
  void goesOnStraightAtBothEnds() {
    MonotoneCubic line = new MonotoneCubic(new double[] {0.2, 0.6}, new double[] {0.1, 0.3});
    Close.within("below", line.applyAsDouble(-0.4), -0.2, 1e-15);
    Close.within("between", line.applyAsDouble(0.5), 0.25, 1e-15);
    Close.within("above", line.applyAsDouble(1.6), 0.8, 1e-15);
    // The end is flat, the whole rises by 0.8/1: above 1 order is kept.
    MonotoneCubic flat = new MonotoneCubic(new double[] {0, 0.5, 1}, new double[] {0, 0.8, 0.8});
    Close.within("after a flat end", flat.applyAsDouble(2), 1.6, 1e-15);
    MonotoneCubic lifted = new MonotoneCubic(new double[] {0, 0.5, 1}, new double[] {0.2, 0.2, 1});
    Close.within("before a flat start", lifted.applyAsDouble(-3), 0.2, 0);
  }
}
