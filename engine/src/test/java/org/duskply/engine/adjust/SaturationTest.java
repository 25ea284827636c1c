package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.Srgb;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Saturation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Distance from grey in Oklab. */
class SaturationTest extends AdjustKernelContract {
  SaturationTest() {
    super(Saturation.class);
  }

  @Override
  List<Adjustment> cases() {
    return List.of(new Saturation(0), new Saturation(0.5), new Saturation(1.1), new Saturation(4));
  }

  @Override
  List<Adjustment> identities() {
    return List.of(new Saturation(1));
  }

  @Override
  double bound() {
    return 0x1p-18; // derived in the kernel's comment
  }

  /**
   * Oklab by the matrices of CSS Color 4 (NumPy and a JavaScript colour library, seven decimals):
   * saturation s moves (L, a, b) to (L, s·a, s·b).
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0, 0.6279554, 0.2248631, 0.1258463",
    "0, 1, 0, 0.8664396, -0.2338876, 0.1794984",
    "0, 0, 1, 0.4520137, -0.032457, -0.3115282",
    "0.2, 0.6, 0.4, 0.6108852, -0.1128192, 0.0465994",
    "0.9, 0.45, 0.1, 0.6768642, 0.1054507, 0.1307596",
    "0.05, 0.1, 0.3, 0.2429454, -0.0038208, -0.0955595",
    "0.6, 0.55, 0.4, 0.6424139, -0.0017552, 0.0555503"
  })
  void movesAlongARayOfOklab(
      double r, double g, double b, double lightness, double green, double yellow) {
    for (double s : new double[] {0.25, 1.5}) {
      float[] in = {(float) Srgb.linear(r), (float) Srgb.linear(g), (float) Srgb.linear(b)};
      float[] made = adjusted(List.of(new Saturation(s)), NamedSpace.SRGB, in);
      double[] lab = oklabOfLinearSrgb(made);
      Close.check("L", lab[0], lightness, 2e-6);
      Close.check("a", lab[1], s * green, 2e-6);
      Close.check("b", lab[2], s * yellow, 2e-6);
    }
  }

  /** The article's own matrix from linear sRGB, to ten digits, which is Oklab within 1e-6 here. */
  private static double[] oklabOfLinearSrgb(float[] v) {
    double l = StrictMath.cbrt(0.4122214708 * v[0] + 0.5363325363 * v[1] + 0.0514459929 * v[2]);
    double m = StrictMath.cbrt(0.2119034982 * v[0] + 0.6806995451 * v[1] + 0.1073969566 * v[2]);
    double s = StrictMath.cbrt(0.0883024619 * v[0] + 0.2817188376 * v[1] + 0.6299787005 * v[2]);
    return new double[] {
      0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
      1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
      0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
    };
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void nothingIsGreyAndGreyStays(NamedSpace working) {
    float[] grey = adjusted(List.of(new Saturation(0)), working, 0.7f, 0.2f, 0.1f);
    Close.check("g", grey[1], grey[0], 2e-6);
    Close.check("b", grey[2], grey[0], 2e-6);
    for (float x : new float[] {0, 0.18f, 1, 8}) {
      for (float v : adjusted(List.of(new Saturation(3)), working, x, x, x)) {
        Close.check(x, v, x, 4e-6);
      }
    }
  }

  @Test
  void thereAndBack() {
    List<Adjustment> list = List.of(new Saturation(2), new Saturation(0.5));
    float[] in = {0.5f, 0.3f, 0.05f};
    float[] back = adjusted(list, NamedSpace.REC2020, in);
    for (int p = 0; p < 3; p++) {
      Close.check(p, back[p], in[p], 4e-6);
    }
  }

  @Test
  void whatItMeansDoesNotDependOnTheWorkingSpace() {
    double[] there =
        ColourSpace.matrix(ColourSpace.of(NamedSpace.SRGB), ColourSpace.of(NamedSpace.REC2020));
    float[] srgb = {0.5f, 0.3f, 0.05f};
    float[] wide = times(there, srgb);
    float[] inSrgb = adjusted(List.of(new Saturation(1.4)), NamedSpace.SRGB, srgb);
    float[] inWide = adjusted(List.of(new Saturation(1.4)), NamedSpace.REC2020, wide);
    float[] moved = times(there, inSrgb);
    for (int p = 0; p < 3; p++) {
      Close.check(p, inWide[p], moved[p], 2e-6);
    }
    assertThat(inSrgb[0]).isGreaterThan(srgb[0]);
  }

  private static float[] times(double[] m, float[] v) {
    float[] made = new float[3];
    for (int row = 0; row < 3; row++) {
      made[row] = (float) (m[3 * row] * v[0] + m[3 * row + 1] * v[1] + m[3 * row + 2] * v[2]);
    }
    return made;
  }
}
