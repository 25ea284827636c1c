package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Saturation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Distance from grey in Oklab. */
class SaturationTest extends AdjustKernelContract {
  private static final Oklab OKLAB = OklabBound.OKLAB;

  @Override
  protected List<Case> cases() {
    return Stream.of(0.0, 0.5, 1.1, 2.0, 4.0).map(SaturationTest::saturated).toList();
  }

  private static Case saturated(double factor) {
    return new Case(
        "factor " + factor,
        Working.kernel(new Saturation(factor)),
        (r, g, b) -> throughLab(factor, r, g, b),
        (in, want) -> bound(factor, in));
  }

  /** By way of Lightness, a and b, as the definition says. */
  private static double[] throughLab(double factor, double r, double g, double b) {
    double[] lab = OKLAB.lab(r, g, b);
    return OKLAB.rgb(lab[0], factor * lab[1], factor * lab[2]);
  }

  /**
   * See {@link OklabBound}; the new roots are off by (1 + 2·factor) times what the roots are, and
   * 6u of their parts. |l₀| + |l₁| + |l₂| = 1.01, so that lightness is at most 1.01 times the
   * greatest.
   */
  private static double bound(double factor, double[] in) {
    OklabBound.Roots roots = OklabBound.Roots.of(in);
    double grows = 1.01 + 2.02 * factor;
    double greatest = grows * roots.greatest();
    double off = grows * roots.off() + 6 * OklabBound.UNIT * greatest;
    return new OklabBound.Roots(greatest, off).ofColour();
  }

  /** In-gamut colours are as good as plain matrices in float would leave them. */
  @Test
  void ordinaryColoursStayWithinAFewUnits() {
    AdjustKernel kernel = Working.kernel(new Saturation(1.1));
    float[][] p = {{0.18f, 0.7f, 0.05f}, {0.2f, 0.6f, 0.02f}, {0.25f, 0.3f, 0.2f}};
    float[][] out = {p[0].clone(), p[1].clone(), p[2].clone()};
    kernel.run(out[0], out[1], out[2], 0, 3);
    for (int i = 0; i < 3; i++) {
      double[] want = throughLab(1.1, p[0][i], p[1][i], p[2][i]);
      for (int c = 0; c < 3; c++) {
        Close.within("pixel " + i, out[c][i], want[c], 2e-6);
      }
    }
  }

  /**
   * Oklab of sRGB colours with the matrices of CSS Color 4, computed with two independent
   * libraries: half the chroma at the same lightness and hue.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0, 0.6279554, 0.2248631, 0.1258463",
    "0, 1, 0, 0.8664396, -0.2338876, 0.1794984",
    "0.2, 0.6, 0.4, 0.6108852, -0.1128192, 0.0465994",
    "0.9, 0.45, 0.1, 0.6768642, 0.1054507, 0.1307596",
    "0.6, 0.55, 0.4, 0.6424139, -0.0017552, 0.0555503"
  })
  void halvesAAndB(double r, double g, double b, double lightness, double labA, double labB) {
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    float[] red = {(float) EncodedAxis.decode(r)};
    float[] green = {(float) EncodedAxis.decode(g)};
    float[] blue = {(float) EncodedAxis.decode(b)};
    Adjustments.prepare(List.of(new Saturation(0.5)), srgb).run(red, green, blue, 0, 1);
    double[] lab = Oklab.of(srgb).lab(red[0], green[0], blue[0]);
    // Seven digits printed, and 2e-6 of the float matrices.
    Close.within("lightness", lab[0], lightness, 2e-6);
    Close.within("a", lab[1], labA / 2, 2e-6);
    Close.within("b", lab[2], labB / 2, 2e-6);
  }

  @Test
  void greyStaysGreyAndNothingIsGrey() {
    float[][] p = {{0f, 0.18f, 1f, 8f}, {0f, 0.18f, 1f, 8f}, {0f, 0.18f, 1f, 8f}};
    Working.kernel(new Saturation(4)).run(p[0], p[1], p[2], 0, 4);
    for (int c = 0; c < 3; c++) {
      // Rows of both matrices sum to 1 within 2⁻²³; a distance from grey that small, times 4 and
      // times the widest row (about 5), three times over for the cube.
      Close.check("grey", p[c], new double[] {0, 0.18, 1, 8}, 60 * 0x1p-23);
    }
    float[][] q = {{0.9f}, {0.1f}, {0.4f}};
    Working.kernel(new Saturation(0)).run(q[0], q[1], q[2], 0, 1);
    assertThat(Math.abs(q[0][0] - q[1][0])).isLessThan(4 * 0x1p-23f);
    assertThat(Math.abs(q[0][0] - q[2][0])).isLessThan(4 * 0x1p-23f);
  }
}
