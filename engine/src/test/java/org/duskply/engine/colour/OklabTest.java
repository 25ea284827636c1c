package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Oklab with the matrices of CSS Color 4. */
class OklabTest {
  /**
   * CSS Color 4 matrices on sRGB colours, computed with NumPy and a JavaScript colour library to
   * 1e-9; printed to seven decimals.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 1, 1, 0, 0",
    "0.5, 0.5, 0.5, 0.5981807, 0, 0",
    "1, 0, 0, 0.6279554, 0.2248631, 0.1258463",
    "0, 1, 0, 0.8664396, -0.2338876, 0.1794984",
    "0, 0, 1, 0.4520137, -0.032457, -0.3115282",
    "0.2, 0.6, 0.4, 0.6108852, -0.1128192, 0.0465994",
    "0.9, 0.45, 0.1, 0.6768642, 0.1054507, 0.1307596",
    "0.05, 0.1, 0.3, 0.2429454, -0.0038208, -0.0955595",
    "0.6, 0.55, 0.4, 0.6424139, -0.0017552, 0.0555503",
    "0.02, 0.01, 0.015, 0.1002087, 0.0101075, -0.002701"
  })
  void srgbColoursAreWhereCssColor4PutsThem(
      double r, double g, double b, double lightness, double a, double yellow) {
    double[] linear = new double[3];
    double[] coded = {r, g, b};
    for (int i = 0; i < 3; i++) {
      linear[i] = ColourSpace.of(NamedSpace.SRGB).curve(i).toLinear(coded[i]);
    }
    for (NamedSpace space : NamedSpace.values()) {
      double[] matrix = ColourSpace.matrix(ColourSpace.of(NamedSpace.SRGB), ColourSpace.of(space));
      double[] in = Matrix3.apply(matrix, linear);
      double[] lab = Oklab.of(ColourSpace.of(space)).lab(in[0], in[1], in[2]);
      assertThat(lab[0]).isCloseTo(lightness, within(0.6e-7));
      assertThat(lab[1]).isCloseTo(a, within(0.6e-7));
      assertThat(lab[2]).isCloseTo(yellow, within(0.6e-7));
    }
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void comesBackAlsoForColoursWithNegativeParts(NamedSpace name) {
    Oklab oklab = Oklab.of(ColourSpace.of(name));
    double[][] colours = {{0.2, 0.5, 0.7}, {-0.3, 1.4, 0.1}, {0, 0, 0}, {0, 0, 1}, {6, -1, 0.1}};
    for (double[] c : colours) {
      double[] lab = oklab.lab(c[0], c[1], c[2]);
      double[] back = oklab.rgb(lab[0], lab[1], lab[2]);
      for (int i = 0; i < 3; i++) {
        assertThat(back[i]).isCloseTo(c[i], within(1e-13));
      }
    }
  }

  /** Ottosson 2020: the published table row X = 0, Y = 0, Z = 1 needs a signed root. */
  @Test
  void theRootKeepsItsSign() {
    double[] d65 = ColourSpace.of(NamedSpace.SRGB).toXyz();
    double[] rgb = Matrix3.apply(Matrix3.inverse(d65), 0, 0, 1);
    double[] lab = Oklab.of(ColourSpace.of(NamedSpace.SRGB)).lab(rgb[0], rgb[1], rgb[2]);
    // his own matrices give (0.153, -1.415, -0.449); those of CSS Color 4 are re-derived, and a
    // wide margin still tells the sign of the root
    assertThat(lab[0]).isCloseTo(0.153, within(2e-3));
    assertThat(lab[1]).isCloseTo(-1.415, within(2e-3));
    assertThat(lab[2]).isCloseTo(-0.449, within(2e-3));
  }

  @Test
  void theSharedMatricesUndoEachOther() {
    double[] product = Matrix3.multiply(Oklab.labOfRoots(), Oklab.rootsOfLab());
    double[] identity = Matrix3.identity();
    Oklab oklab = Oklab.of(ColourSpace.of(NamedSpace.REC2020));
    double[] there = Matrix3.multiply(oklab.toLms(), oklab.fromLms());
    for (int i = 0; i < 9; i++) {
      assertThat(product[i]).isCloseTo(identity[i], within(1e-15));
      assertThat(there[i]).isCloseTo(identity[i], within(1e-15));
    }
  }
}
