package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.duskply.engine.testing.Close;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Chromaticities of lights. */
class LightLocusTest {
  /** Planck's law with the CIE 1931 observer, c₂ = 1.4388 cm·K, summed in steps of 1 nm. */
  @ParameterizedTest
  @CsvSource({
    "2000, 0.52668, 0.41330",
    "2700, 0.45986, 0.41060",
    "2856, 0.44754, 0.40743",
    "3000, 0.43693, 0.40408",
    "3200, 0.42336, 0.39895",
    "4000, 0.38044, 0.37675",
    "5000, 0.34510, 0.35161",
    "6500, 0.31353, 0.32363",
    "10000, 0.28063, 0.28829"
  })
  void glowingBodiesAreWithinSixTenThousandthsOfPlancksLaw(double kelvin, double x, double y) {
    check(LightLocus.planckian(kelvin), x, y, 6e-4);
  }

  /** The cubics of Kang et al. 2002 computed a second time, in another language. */
  @ParameterizedTest
  @CsvSource({
    "2000, 0.5269026, 0.4132649",
    "2700, 0.4593140, 0.4106602",
    "3200, 0.4231818, 0.3990777",
    "4000, 0.3805283, 0.3767335",
    "5500, 0.3323363, 0.3410395",
    "10000, 0.2806980, 0.2883056"
  })
  void glowingBodiesAreKangsCubics(double kelvin, double x, double y) {
    check(LightLocus.planckian(kelvin), x, y, 5.1e-8);
  }

  /** Krystek 1985: another approximation of the same curve, in CIE 1960 (u, v). */
  @ParameterizedTest
  @ValueSource(doubles = {2000, 2700, 3000, 3500, 4000, 5000, 6500, 10_000})
  void glowingBodiesAreNearKrysteksCurve(double t) {
    double u =
        (0.860117757 + 1.54118254e-4 * t + 1.28641212e-7 * t * t)
            / (1 + 8.42420235e-4 * t + 7.08145163e-7 * t * t);
    double v =
        (0.317398726 + 4.22806245e-5 * t + 4.20481691e-8 * t * t)
            / (1 - 2.89741816e-5 * t + 1.61456053e-7 * t * t);
    check(LightLocus.uv(LightLocus.planckian(t)), u, v, 6e-4);
  }

  /** CIE 15: illuminant A is (0.44757, 0.40745). */
  @Test
  void illuminantAIsAGlowingBody() {
    check(LightLocus.at(2856), 0.44757, 0.40745, 6e-4);
  }

  /** CIE 15: D50, D55, D65 and D75 at their nominal temperature times 1.4388/1.4380. */
  @ParameterizedTest
  @CsvSource({
    "5000, 0.34567, 0.35850",
    "5500, 0.33242, 0.34743",
    "6500, 0.31271, 0.32902",
    "7500, 0.29902, 0.31485"
  })
  void daylightIsThatOfTheStandard(double nominal, double x, double y) {
    // The standard's pairs come of its spectra; its formula is 1.24e-4 away from them at D75.
    check(LightLocus.at(nominal * 1.4388 / 1.4380), x, y, 1.25e-4);
  }

  /** The formula of CIE 15, as the tests of a colour library have it. */
  @ParameterizedTest
  @CsvSource({
    "4000, 0.382343625, 0.383766261",
    "7000, 0.305357431, 0.321646345",
    "25000, 0.249853670, 0.254799464"
  })
  void daylightIsItsFormula(double kelvin, double x, double y) {
    check(LightLocus.daylight(kelvin), x, y, 5.1e-10);
  }

  /** McCamy 1992 gives back the temperature, to its own half per cent. */
  @ParameterizedTest
  @ValueSource(doubles = {2700, 2856, 3200, 3800, 4000, 4400, 4700, 5000, 5500, 6500, 7500})
  void theTemperatureIsFoundAgain(double kelvin) {
    Close.within(kelvin + " K", mcCamy(LightLocus.at(kelvin)), kelvin, 0.005 * kelvin);
  }

  /** The check of the check: published temperatures of published chromaticities. */
  @Test
  void mcCamysFormulaIsRight() {
    Close.within("A", mcCamy(new double[] {0.44757, 0.40745}), 2857.28961, 1e-5);
    Close.within("D65", mcCamy(new double[] {0.3127, 0.329}), 6505.08059, 1e-5);
  }

  static double mcCamy(double[] xy) {
    double n = (xy[0] - 0.3320) / (0.1858 - xy[1]);
    return 449 * n * n * n + 3525 * n * n + 6823.3 * n + 5520.33;
  }

  @Test
  void betweenTheLociBothAreMixed() {
    for (double share : new double[] {0.25, 0.5, 0.9}) {
      double kelvin = 4000 + 1000 * share;
      double[] glow = LightLocus.planckian(kelvin);
      double[] day = LightLocus.daylight(kelvin);
      double x = (1 - share) * glow[0] + share * day[0];
      double y = (1 - share) * glow[1] + share * day[1];
      check(LightLocus.at(kelvin), x, y, 1e-15);
    }
  }

  /** Lights never jump: Kang's cubics meet within 8e-5, the two loci by the mixture. */
  @Test
  void warmerIsAlwaysRedderAndStepsAreSmall() {
    double[] before = LightLocus.at(LightLocus.WARMEST);
    for (double kelvin = LightLocus.WARMEST + 1; kelvin <= LightLocus.COOLEST; kelvin++) {
      double[] here = LightLocus.at(kelvin);
      assertThat(here[0]).as("x at " + kelvin).isLessThan(before[0]);
      // The steepest slope of x is 1.2e-4 a kelvin, at the warm end.
      assertThat(before[0] - here[0]).as("step at " + kelvin).isLessThan(2.1e-4);
      before = here;
    }
  }

  @Test
  void besideTheLocusIsSoFarInUv() {
    for (double kelvin = 1700; kelvin < 25_000; kelvin += 371) {
      double[] on = LightLocus.uv(LightLocus.at(kelvin));
      double[] green = LightLocus.uv(LightLocus.beside(kelvin, 0.01));
      double[] magenta = LightLocus.uv(LightLocus.beside(kelvin, -0.01));
      Close.within("green", Math.hypot(green[0] - on[0], green[1] - on[1]), 0.01, 1e-15);
      // A greener light lies above, a more magenta one as far below.
      assertThat(green[1]).as(kelvin + " K").isGreaterThan(on[1]);
      check(
          new double[] {green[0] + magenta[0], green[1] + magenta[1]}, 2 * on[0], 2 * on[1], 1e-15);
      // The nearest light of the locus is the one it stands beside, to 3 parts in a thousand.
      double nearest = Double.MAX_VALUE;
      double found = 0;
      for (double k = kelvin * 0.97; k < kelvin * 1.03 && k <= 25_000; k += kelvin * 1e-4) {
        double[] other = LightLocus.uv(LightLocus.at(Math.max(1667, k)));
        double distance = Math.hypot(green[0] - other[0], green[1] - other[1]);
        if (distance < nearest) {
          nearest = distance;
          found = k;
        }
      }
      Close.within("nearest to " + kelvin, found, kelvin, 0.003 * kelvin);
    }
  }

  @Test
  void besideByNothingIsOnTheLocus() {
    assertThat(LightLocus.beside(3200, 0)).containsExactly(LightLocus.at(3200));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 1666.9, 25_000.1, Double.NaN, Double.POSITIVE_INFINITY})
  void temperaturesBeyondAreRefused(double kelvin) {
    assertThatThrownBy(() -> LightLocus.at(kelvin))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("K");
  }

  private static void check(double[] got, double first, double second, double tolerance) {
    Close.within("first", got[0], first, tolerance);
    Close.within("second", got[1], second, tolerance);
  }
}
