package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Close;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Gel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Gels as matrices. */
class GelMatrixTest {
  private static final ColourSpace SPACE = ColourSpace.of(NamedSpace.REC2020);

  private static Gel mired(double shift) {
    return new Gel(shift, null, null, 0);
  }

  private static Gel between(double from, double to) {
    return new Gel(null, from, to, 0);
  }

  /** The light of that temperature, in working values. */
  private static double[] light(double kelvin) {
    return rgb(LightLocus.at(kelvin));
  }

  private static double[] rgb(double[] xy) {
    return Matrix3.apply(Matrix3.inverse(SPACE.toXyz()), White.ofChromaticity(xy));
  }

  private static double[] xy(double[] rgb) {
    double[] xyz = Matrix3.apply(SPACE.toXyz(), rgb);
    double sum = xyz[0] + xyz[1] + xyz[2];
    return new double[] {xyz[0] / sum, xyz[1] / sum};
  }

  private static void same(double[] got, double[] want, double tolerance) {
    for (int i = 0; i < want.length; i++) {
      Close.within("number " + i, got[i], want[i], tolerance);
    }
  }

  @Test
  void carriesOneLightToTheOtherAtTheSameLuminance() {
    double[] got = Matrix3.apply(GelMatrix.of(between(3000, 3600), SPACE), light(3000));
    same(got, light(3600), 1e-13);
    Close.within("luminance", Matrix3.apply(SPACE.toXyz(), got)[1], 1, 1e-13);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 42, 159, 320})
  void minusUndoesPlus(double shift) {
    double[] there = GelMatrix.of(mired(shift), SPACE);
    double[] back = GelMatrix.of(mired(-shift), SPACE);
    same(Matrix3.multiply(back, there), Matrix3.identity(), 1e-12);
  }

  @Test
  void aGelThatChangesNothingIsTheIdentity() {
    assertThat(GelMatrix.of(mired(0), SPACE)).containsExactly(Matrix3.identity());
    assertThat(GelMatrix.of(between(3200, 3200), SPACE)).containsExactly(Matrix3.identity());
  }

  /** Mired is 10⁶/T by definition; the shift is the difference, about the middle of 200. */
  @ParameterizedTest
  @ValueSource(doubles = {-320, -131, 0, 42, 159, 320})
  void shiftsByThatManyMired(double shift) {
    double from = 1e6 / GelMatrix.from(mired(shift));
    double to = 1e6 / GelMatrix.to(mired(shift));
    Close.within("shift", to - from, shift, 1e-12);
    Close.within("middle", to + from, 400, 1e-12);
  }

  /**
   * Strengths of gels as their makers' swatch books name them (common practice, no standard; from
   * copies of the books): the lights before and after, and the shift, which is theirs within 4.1
   * mired. A gel here is one matrix, adapted about 200 mired; on lights elsewhere it comes out
   * within 8 mired of the maker's.
   */
  @ParameterizedTest
  @CsvSource({
    "6500, 3200, 159",
    "6500, 3800, 109",
    "6500, 4600, 64",
    "5500, 3800, 81",
    "5500, 2900, 167",
    "3200, 5700, -137",
    "3200, 4300, -78",
    "3200, 3600, -35",
    "3200, 3400, -18"
  })
  void namedGelsTurnOneLightIntoTheOther(double before, double after, double shift) {
    Close.within("nominal", 1e6 / after - 1e6 / before, shift, 4.1);
    double[] got = xy(Matrix3.apply(GelMatrix.of(mired(shift), SPACE), light(before)));
    Close.within("after", 1e6 / LightLocusTest.mcCamy(got), 1e6 / after, 8);
  }

  @Test
  void plusGreenMovesTheTargetAlone() {
    double[] target = rgb(LightLocus.beside(3600, 0.008));
    double[] got =
        Matrix3.apply(GelMatrix.of(new Gel(null, 3000.0, 3600.0, 8), SPACE), light(3000));
    same(got, target, 1e-13);
    double[] alone = Matrix3.apply(GelMatrix.of(new Gel(null, null, null, 8), SPACE), light(5000));
    same(alone, rgb(LightLocus.beside(5000, 0.008)), 1e-13);
  }

  /** However strong: every number finite, and no cone left with less than none. */
  @Test
  void theStrongestGelsAreHeld() {
    for (double from : new double[] {1667, 4000, 25_000}) {
      for (double to : new double[] {1667, 2300, 4000, 25_000}) {
        for (double green : new double[] {-50, 0, 50}) {
          double[] matrix = GelMatrix.of(new Gel(null, from, to, green), SPACE);
          double[] xyz = Matrix3.apply(SPACE.toXyz(), Matrix3.apply(matrix, light(from)));
          for (double cone : Bradford.cones(xyz)) {
            assertThat(cone).isGreaterThan(1.0 / 65).isLessThan(4);
          }
        }
      }
    }
  }

  /**
   * A worked white balance: 3200 K by Planck's law, (0.42336, 0.39895), to D65 in linear sRGB;
   * computed with a numerical library from the published Bradford matrix.
   */
  @Test
  void balancesAWorkedExample() {
    double[] m = ColourSpace.of(NamedSpace.SRGB).toXyz();
    double[] adapted =
        Bradford.between(
            White.ofChromaticity(0.42336, 0.39895), White.ofChromaticity(0.3127, 0.3290));
    double[] got = Matrix3.multiply(Matrix3.inverse(m), Matrix3.multiply(adapted, m));
    double[] want = {
      0.8001352,
      -0.3687535,
      -0.0759923,
      0.0173232,
      1.1324216,
      -0.0297577,
      0.036082,
      0.1326077,
      2.5306785
    };
    same(got, want, 1e-6);
  }
}
