package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Lcg;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The window of hues. */
class HueWindowTest {
  private static final Oklab OKLAB = Oklab.of(ColourSpace.of(NamedSpace.SRGB));

  @ParameterizedTest
  @CsvSource({
    "255, 60, 20",
    "0, 90, 0",
    "-30, 1, 5",
    "120, 180, 60",
    "40, 350, 20",
    "10, 360, 0",
    "200, 40, 180"
  })
  void agreesWithTheAnglesThemselves(double centre, double width, double soft) {
    HueWindow window = HueWindow.of(OKLAB, centre, width, soft);
    for (int turn = 0; turn < 3600; turn++) {
      double hue = StrictMath.toRadians(turn / 10.0 + 0.03);
      for (double chroma : new double[] {0.009, 0.012, 0.02, 0.029, 0.031, 0.3}) {
        float a = (float) (chroma * StrictMath.cos(hue));
        float b = (float) (chroma * StrictMath.sin(hue));
        double want = HueWeight.of(centre, width, soft, a, b);
        Close.within(turn + " at " + chroma, window.weight(a, b), want, room(width, soft));
      }
    }
  }

  /** 2⁻²² of t, and 2⁻²³ of C, by the steepest slope of each smooth way, 1.5 over its length. */
  private static double room(double width, double soft) {
    double none = Math.cos(Math.toRadians(Math.min(180, width / 2 + soft)));
    double all = Math.cos(Math.toRadians(width / 2));
    double byAngle = all <= none ? 0 : 1.5 * 0x1p-22 / (all - none);
    return byAngle + 1.5 * 0x1p-23 / 0.02 + 0x1p-21;
  }

  /**
   * Oklab hues of sRGB colours by the matrices of CSS Color 4, computed with two independent
   * libraries: red 29.2, green 142.5, blue 264.1, an orange 51.1, a grey-green 157.6 degrees. Each
   * is held by a window two degrees about it, and by none beside it.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0, 29.23388",
    "0, 1, 0, 142.49535",
    "0, 0, 1, 264.05202",
    "0.9, 0.45, 0.1, 51.11566",
    "0.2, 0.6, 0.4, 157.55716"
  })
  void findsTheHueOfAColour(double r, double g, double b, double hue) {
    float[][] p = {linear(r), linear(g), linear(b)};
    assertThat(weight(HueWindow.of(OKLAB, hue, 2, 0), p)).isEqualTo(1);
    assertThat(weight(HueWindow.of(OKLAB, hue + 1.1, 2, 0), p)).isZero();
    assertThat(weight(HueWindow.of(OKLAB, hue - 1.1, 2, 0), p)).isZero();
    assertThat(weight(HueWindow.of(OKLAB, hue + 180, 358, 0), p)).isZero();
  }

  private static float[] linear(double encoded) {
    return new float[] {(float) EncodedAxis.decode(encoded)};
  }

  private static float weight(HueWindow window, float[][] p) {
    float[] weights = new float[1];
    window.weights(p[0], p[1], p[2], weights, 0, 1);
    return weights[0];
  }

  @Test
  void greyHasNoHue() {
    HueWindow every = HueWindow.of(OKLAB, 0, 360, 0);
    for (float grey : new float[] {0, -0f, 1e-6f, 0.18f, 1, 8}) {
      float[] v = {grey};
      assertThat(weight(every, new float[][] {v, v, v})).as("grey " + grey).isZero();
    }
    assertThat(every.weight(Float.NaN, 0)).isZero();
  }

  @Test
  void aWindowOfAllHuesHoldsEveryColour() {
    Lcg noise = new Lcg(9);
    float[][] p = {noise.samples(999, 0, 1), noise.samples(999, 0, 1), noise.samples(999, 0, 1)};
    float[] weights = new float[999];
    HueWindow.of(OKLAB, 77, 360, 0).weights(p[0], p[1], p[2], weights, 0, 999);
    for (int i = 0; i < 999; i++) {
      double[] lab = OKLAB.lab(p[0][i], p[1][i], p[2][i]);
      double chroma = Math.hypot(lab[1], lab[2]);
      // Oklab in float is within 2e-6, and the slope towards grey is at most 75.
      Close.within("colour " + i, weights[i], HueWeight.smooth(0.01, 0.03, chroma), 2e-4);
    }
  }

  @Test
  void writesItsWindowOnly() {
    float[] v = {1, 1, 1};
    float[] none = {0, 0, 0};
    float[] weights = {-7, -7, -7};
    HueWindow.of(OKLAB, 29, 20, 0).weights(v, none, none, weights, 1, 2);
    assertThat(weights).containsExactly(-7, 1, -7);
  }
}
