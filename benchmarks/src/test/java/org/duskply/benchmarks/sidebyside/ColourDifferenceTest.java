package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.duskply.engine.pixel.Encoded;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against Sharma, Wu and Dalal, The CIEDE2000 color-difference formula: implementation notes,
 * supplementary test data, and mathematical observations (2005), table 1.
 */
class ColourDifferenceTest {
  /** Printed to four places, of which the last may be rounded either way. */
  private static final double PRINTED = 1e-4;

  @ParameterizedTest
  @CsvSource({
    "50.0000, 2.6772, -79.7751, 50.0000, 0.0000, -82.7485, 2.0425",
    "50.0000, 3.1571, -77.2803, 50.0000, 0.0000, -82.7485, 2.8615",
    "50.0000, 2.8361, -74.0200, 50.0000, 0.0000, -82.7485, 3.4412",
    "50.0000, -1.3802, -84.2814, 50.0000, 0.0000, -82.7485, 1.0000",
    "50.0000, -1.1848, -84.8006, 50.0000, 0.0000, -82.7485, 1.0000",
    "50.0000, -0.9009, -85.5211, 50.0000, 0.0000, -82.7485, 1.0000",
    "50.0000, 0.0000, 0.0000, 50.0000, -1.0000, 2.0000, 2.3669",
    "50.0000, -1.0000, 2.0000, 50.0000, 0.0000, 0.0000, 2.3669",
    "50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0009, 7.1792",
    "50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0010, 7.1792",
    "50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0011, 7.2195",
    "50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0012, 7.2195",
    "50.0000, -0.0010, 2.4900, 50.0000, 0.0009, -2.4900, 4.8045",
    "50.0000, -0.0010, 2.4900, 50.0000, 0.0010, -2.4900, 4.8045",
    "50.0000, -0.0010, 2.4900, 50.0000, 0.0011, -2.4900, 4.7461",
    "50.0000, 2.5000, 0.0000, 50.0000, 0.0000, -2.5000, 4.3065",
    "50.0000, 2.5000, 0.0000, 73.0000, 25.0000, -18.0000, 27.1492",
    "50.0000, 2.5000, 0.0000, 61.0000, -5.0000, 29.0000, 22.8977",
    "50.0000, 2.5000, 0.0000, 56.0000, -27.0000, -3.0000, 31.9030",
    "50.0000, 2.5000, 0.0000, 58.0000, 24.0000, 15.0000, 19.4535",
    "50.0000, 2.5000, 0.0000, 50.0000, 3.1736, 0.5854, 1.0000",
    "50.0000, 2.5000, 0.0000, 50.0000, 3.2972, 0.0000, 1.0000",
    "50.0000, 2.5000, 0.0000, 50.0000, 1.8634, 0.5757, 1.0000",
    "50.0000, 2.5000, 0.0000, 50.0000, 3.2592, 0.3350, 1.0000",
    "60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644",
    "63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630",
    "61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731",
    "35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645",
    "22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373",
    "36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146",
    "90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441",
    "90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381",
    "6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377",
    "2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082"
  })
  void pairsOfTheTable(
      double l1, double a1, double b1, double l2, double a2, double b2, double want) {
    double[] one = {l1, a1, b1};
    double[] other = {l2, a2, b2};
    assertThat(ColourDifference.of(one, other)).isCloseTo(want, within(PRINTED));
    // Where hues are opposite to the last bit (rows 10 and 14 of the table) the two ways may
    // differ.
    if (Math.abs(a1 * b2 - a2 * b1) > 1e-9) {
      assertThat(ColourDifference.of(other, one)).isCloseTo(want, within(PRINTED));
    }
  }

  /**
   * CIELAB of sRGB colours in D65, computed with two independent libraries. The matrix has ten
   * places, so that a* and b*, up to 500 times a share's cube root, are off by less than 1e-6.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 1, 100, 0, 0",
    "1, 0, 0, 53.237116, 80.090114, 67.203264",
    "0, 0, 1, 32.300873, 79.19527, -107.855466",
    "0.2, 0.6, 0.4, 56.530227, -41.506219, 18.452082",
    "0.02, 0.01, 0.015, 0.873048, 0.844087, -0.247613"
  })
  void labOfEncodedColours(double r, double g, double b, double l, double a, double bb) {
    double[] lab =
        ColourDifference.lab(
            Encoded.decodeExactly(r), Encoded.decodeExactly(g), Encoded.decodeExactly(b));
    assertThat(lab[0]).isCloseTo(l, within(1e-6));
    assertThat(lab[1]).isCloseTo(a, within(1e-6));
    assertThat(lab[2]).isCloseTo(bb, within(1e-6));
  }
}
