package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The curves of the five named spaces against their standards, and what every curve promises. */
class TransferCurveTest {
  /** Vectors are printed to ten decimals. */
  private static final double PRINTED = 0.6e-10;

  private static TransferCurve curve(NamedSpace name) {
    return ColourSpace.of(name).curve(0);
  }

  /** IEC 61966-2-1: 8-bit codes and their light, computed from its two pieces. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "1, 0.000303527",
    "5, 0.0015176349",
    "10, 0.0030352698",
    "11, 0.0033465358",
    "32, 0.0144438436",
    "64, 0.0512694584",
    "118, 0.1811642442",
    "127, 0.2122307574",
    "128, 0.2158605001",
    "188, 0.502886458",
    "224, 0.7454042095",
    "254, 0.9911020971",
    "255, 1"
  })
  void srgbDecodesAsPublished(int code, double linear) {
    assertThat(curve(NamedSpace.SRGB).toLinear(code / 255.0)).isCloseTo(linear, within(PRINTED));
    assertThat(curve(NamedSpace.DISPLAY_P3)).isEqualTo(curve(NamedSpace.SRGB));
  }

  /** IEC 61966-2-1 the other way, with the odd extension below 0 of CSS Color 4. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.0001, 0.001292",
    "0.003, 0.03876",
    "0.0031308, 0.040449936",
    "0.01, 0.0998528227",
    "0.18, 0.4613561295",
    "0.5, 0.7353569831",
    "1, 1",
    "1.5, 1.1941765347",
    "4, 1.8247962953",
    "-0.01, -0.0998528227",
    "-0.25, -0.5370987305"
  })
  void srgbEncodesAsPublished(double linear, double encoded) {
    assertThat(curve(NamedSpace.SRGB).toEncoded(linear)).isCloseTo(encoded, within(PRINTED));
  }

  /** IEC 61966-2-5, ISO 22028-2 and ITU-R BT.2020-2 (α, β unrounded), computed from each. */
  @ParameterizedTest
  @CsvSource({
    "0,       0,            0,            0",
    "0.01,    0.0000399542, 0.000625,     0.0022222222",
    "0.02,    0.0001834819, 0.00125,      0.0044444444",
    "0.03125, 0.0004896051, 0.001953125,  0.0069444444",
    "0.05,    0.0013764183, 0.0045514105, 0.0111111111",
    "0.1,     0.0063209339, 0.0158489319, 0.022488867",
    "0.25,    0.04741747,   0.0824692444, 0.0782546888",
    "0.5,     0.2177555281, 0.2871745887, 0.2597194371",
    "0.75,    0.5311685927, 0.5958134106, 0.5636218719",
    "0.9,     0.7931754594, 0.827249507,  0.8090111738",
    "1,       1,            1,            1"
  })
  void theOtherThreeDecodeAsPublished(double v, double a98, double prophoto, double rec2020) {
    assertThat(curve(NamedSpace.A98_RGB).toLinear(v)).isCloseTo(a98, within(PRINTED));
    assertThat(curve(NamedSpace.PROPHOTO_RGB).toLinear(v)).isCloseTo(prophoto, within(PRINTED));
    assertThat(curve(NamedSpace.REC2020).toLinear(v)).isCloseTo(rec2020, within(PRINTED));
  }

  /** ITU-R BT.2020-2, table 4: the two equations, and the 12-bit figures it prints. */
  @Test
  void rec2020ConstantsSolveTheStandardsEquations() {
    double alpha = NamedNumbers.ALPHA;
    double beta = NamedNumbers.BETA;
    assertThat(4.5 * beta - (alpha * Math.pow(beta, 0.45) - alpha + 1)).isCloseTo(0, within(1e-14));
    assertThat(0.45 * alpha * Math.pow(beta, -0.55) - 4.5).isCloseTo(0, within(1e-12));
    assertThat(Math.round(alpha * 1e4) / 1e4).isEqualTo(1.0993);
    assertThat(Math.round(beta * 1e4) / 1e4).isEqualTo(0.0181);
    for (int i = 0; i <= 4095; i++) {
      double l = i / 4095.0;
      double printed = l < 0.0181 ? 4.5 * l : 1.0993 * Math.pow(l, 0.45) - 0.0993;
      // the rounded pair stays within a hundredth of a 12-bit code of ours
      assertThat(curve(NamedSpace.REC2020).toEncoded(l)).isCloseTo(printed, within(0.02 / 4095));
    }
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void everyNamedCurveRisesIsOddAndComesBack(NamedSpace name) {
    TransferCurve curve = curve(name);
    double before = -1;
    for (int i = 0; i <= 100_000; i++) {
      double v = i / 50_000.0;
      double l = curve.toLinear(v);
      double back = curve.toEncoded(l);
      boolean rises = l > before;
      boolean odd = curve.toLinear(-v) == -l && curve.toEncoded(-l) == -back;
      // a few roundings of a power; the rounded constants of srgb add 3e-8 at its join alone
      double bound = Math.abs(v - 0.04045) < 1e-5 ? 3e-8 : 4e-15;
      if (!(rises && odd && Math.abs(back - v) <= bound)) {
        fail("at %s: light %s, rises %s, odd %s, back %s", v, l, rises, odd, back);
      }
      before = l;
    }
    assertThat(curve.toLinear(1)).isCloseTo(1, within(1e-15));
  }

  @Test
  void samplesAreJoinedByLinesAndGoOnAboveWhite() {
    TransferCurve curve = TransferCurve.sampled(0.1, 0.2, 0.6);
    assertThat(curve.toLinear(0)).isEqualTo(0.1);
    assertThat(curve.toLinear(0.25)).isCloseTo(0.15, within(1e-15));
    assertThat(curve.toLinear(0.75)).isCloseTo(0.4, within(1e-15));
    assertThat(curve.toLinear(1)).isEqualTo(0.6);
    assertThat(curve.toLinear(1.5)).isCloseTo(1.0, within(1e-15));
    assertThat(curve.toLinear(-0.25)).isCloseTo(0.05, within(1e-15));
    for (double v : new double[] {-0.5, 0, 0.1, 0.5, 0.9, 1, 1.3}) {
      assertThat(curve.toEncoded(curve.toLinear(v))).isCloseTo(v, within(1e-15));
    }
  }

  @Test
  void aTableThatStandsStillOrFallsBackAnswersTheLeastEncodedValue() {
    TransferCurve curve = TransferCurve.sampled(0, 0.5, 0.5, 0.4, 1);
    assertThat(curve.toEncoded(0.5)).isEqualTo(0.25);
    assertThat(curve.toEncoded(0.75)).isCloseTo(0.875, within(1e-15));
    assertThat(curve.toLinear(0.75)).isEqualTo(0.4);
  }

  @Test
  void aDecodeTableHoldsEveryCodeRoundedOnce() {
    TransferCurve curve = curve(NamedSpace.SRGB);
    float[] table = DecodeTable.of(curve, 65_536);
    assertThat(table).hasSize(65_536);
    assertThat(table[0]).isEqualTo(0f);
    assertThat(table[32_768]).isEqualTo((float) curve.toLinear(32_768 / 65_535.0));
    assertThat(table[65_535]).isEqualTo(1f);
  }
}
