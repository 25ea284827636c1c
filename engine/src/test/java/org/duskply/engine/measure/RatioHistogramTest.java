package org.duskply.engine.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** The ratio that most places agree on. */
class RatioHistogramTest {
  /** Half a fine bin, by which the middle of a bin may miss what fell into it. */
  private static final double HALF_BIN = 0.5 / RatioHistogram.FINE;

  private static RatioHistogram normal(double centre, double sigma, int count) {
    Random random = new Random(3);
    RatioHistogram histogram = new RatioHistogram();
    for (int i = 0; i < count; i++) {
      histogram.add(centre + sigma * random.nextGaussian());
    }
    return histogram;
  }

  @Test
  void oneRatioIsFound() {
    for (double stops : new double[] {-19.9, -2, -0.01, 0, 1 / 3.0, 7.77}) {
      RatioHistogram histogram = new RatioHistogram();
      for (int i = 0; i < 10; i++) {
        histogram.add(stops);
      }
      assertThat(histogram.peak().stops()).isCloseTo(stops, Offset.offset(HALF_BIN + 1e-12));
      assertThat(histogram.peak().share()).isEqualTo(1);
    }
  }

  @Test
  void noiseDoesNotMoveIt() {
    // The standard error of a median of n normal values is 1.2533·σ/√n; three of them, and half a
    // bin, and that the window of ±1/8 stop stands up to a coarse bin or two off the true centre:
    // for σ = 0.05 almost nothing of the distribution is cut off by that.
    double bound = 3 * 1.2533 * 0.05 / Math.sqrt(5000) + HALF_BIN + 0.001;
    assertThat(normal(-1.37, 0.05, 5000).peak().stops()).isCloseTo(-1.37, Offset.offset(bound));
  }

  @Test
  void whatAFlashLightsUnevenlyDoesNotMoveIt() {
    // A third of the places at the ambient ratio, two thirds strewn evenly over four stops above.
    RatioHistogram histogram = normal(-1, 0.02, 3000);
    Random random = new Random(4);
    for (int i = 0; i < 6000; i++) {
      histogram.add(-0.9 + 4 * random.nextDouble());
    }
    assertThat(histogram.total()).isEqualTo(9000);
    assertThat(histogram.peak().stops()).isCloseTo(-1, Offset.offset(0.01));
    // 3000 of 9000, and the flash's own share of the window from −0.9 to −0.875.
    assertThat(histogram.peak().share()).isCloseTo(1 / 3.0, Offset.offset(0.01));
  }

  @Test
  void ofEqualsTheLowestIsTaken() {
    RatioHistogram histogram = new RatioHistogram();
    for (double stops : new double[] {3, -3, 0}) {
      histogram.add(stops);
    }
    assertThat(histogram.peak().stops()).isCloseTo(-3, Offset.offset(HALF_BIN + 1e-12));
  }

  @Test
  void whatIsNoRatioIsLeftOut() {
    RatioHistogram histogram = new RatioHistogram();
    for (double none :
        new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 20, -20.1}) {
      histogram.add(none);
    }
    assertThat(histogram.total()).isZero();
    assertThatThrownBy(histogram::peak).isInstanceOf(IllegalStateException.class);
    histogram.add(-20);
    assertThat(histogram.peak().stops()).isCloseTo(-20, Offset.offset(2 * HALF_BIN));
  }
}
