package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.LightTable;
import org.duskply.engine.testing.reference.VignetteFormula;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.step.Falloff;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Light that falls off towards the corners. */
class VignetteTest {
  private static final int WIDTH = 45;
  private static final int HEIGHT = 30;
  private static final Extent WHOLE = Extent.ofSize(WIDTH, HEIGHT);

  private static LightTable table() {
    return new LightTable(WIDTH, HEIGHT).frame("dusk", (x, y, c) -> 0.1 + x * 0.03 - y * 0.007 * c);
  }

  private static Planes vignetted(String keys, Extent extent, double scale) {
    LightTable table = table();
    return table.picture(table.steps("  - { vignette: " + keys + " }"), extent, scale);
  }

  private static void check(String keys, Falloff falloff, Extent extent, double scale) {
    Planes got = vignetted(keys, extent, scale);
    Planes below = table().picture("  - { adjust: [{ exposure: 0 }] }");
    VignetteFormula formula =
        new VignetteFormula(
            falloff, extent.left(), extent.top(), extent.width(), extent.height(), scale);
    // The exponent rounded to float, |stops|·2⁻²⁴·ln 2 of the factor; the power and the product
    // 2·2⁻²⁴.
    double share = (0.7 * Math.abs(falloff.stops()) + 2.1) * 0x1p-24;
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        double factor = formula.factor(x, y);
        for (int p = 0; p < 3; p++) {
          double want = below.plane(p)[below.at(x, y)] * factor;
          String what = keys + " at " + x + ", " + y;
          Close.within(what, got.plane(p)[got.at(x, y)], want, share * Math.abs(want));
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.6, 0.5, -20, 20, -3})
  void agreesWithTheFormula(double stops) {
    check(stops + "", new Falloff(stops, 0.4, 1, null), WHOLE, 1);
    check(
        "{ stops: " + stops + ", begins: 0, full: 0.5 }",
        new Falloff(stops, 0, 0.5, null),
        WHOLE,
        1);
    check(
        "{ stops: " + stops + ", centre: [-3, 7.25], full: 10 }",
        new Falloff(stops, 0.4, 10, new Point(-3, 7.25)),
        WHOLE,
        1);
  }

  @Test
  void aGridOfAnotherSizeScales() {
    Extent doubled = Extent.ofSize(2 * WIDTH, 2 * HEIGHT);
    check("-0.6", new Falloff(-0.6, 0.4, 1, null), doubled, 0.5);
    check(
        "{ stops: -0.6, centre: [60, 20] }",
        new Falloff(-0.6, 0.4, 1, new Point(60, 20)),
        doubled,
        0.5);
    for (int p = 0; p < 3; p++) {
      assertThat(vignetted("-0.6", doubled, 0.5).plane(p))
          .isEqualTo(vignetted("-0.6", WHOLE, 1).plane(p));
    }
  }

  @Test
  void isMeasuredByWhatIsShown() {
    check("-0.6", new Falloff(-0.6, 0.4, 1, null), new Extent(10, 5, 20, 12), 1);
  }

  @Test
  void theMiddleKeepsItsBitsAndTheCornersGetAllOfIt() {
    Planes got = vignetted("{ stops: -1, begins: 0.4, full: 0.8 }", WHOLE, 1);
    Planes below = table().picture("  - { adjust: [{ exposure: 0 }] }");
    assertThat(LightTable.pixel(got, 22, 15)).isEqualTo(LightTable.pixel(below, 22, 15));
    float[] corner = LightTable.pixel(below, 0, 0);
    assertThat(LightTable.pixel(got, 0, 0))
        .isEqualTo(new float[] {corner[0] / 2, corner[1] / 2, corner[2] / 2});
  }

  /** Where both ends are one, there is a step; at the very distance it is full. */
  @Test
  void withoutAWidthItIsAStep() {
    // The middle of pixel (22, 14) is the centre of 45 × 29: distance 0.
    Planes got = vignetted("{ stops: 1, begins: 0, full: 0 }", Extent.ofSize(WIDTH, 29), 1);
    Planes below = table().picture("  - { adjust: [{ exposure: 0 }] }");
    assertThat(LightTable.pixel(got, 22, 14)[0]).isEqualTo(2 * LightTable.pixel(below, 22, 14)[0]);
    check("{ stops: 1, begins: 0.5, full: 0.5 }", new Falloff(1, 0.5, 0.5, null), WHOLE, 1);
  }

  @Test
  void noStopsChangeNoBit() {
    Planes got = vignetted("0", WHOLE, 1);
    Planes below = table().picture("  - { adjust: [{ exposure: 0 }] }");
    for (int p = 0; p < 3; p++) {
      assertThat(got.plane(p)).isEqualTo(below.plane(p));
    }
  }

  @Test
  void doublesItsDistanceInStopsHalfWay() {
    // Half way between begins and full, smooth is ½: half of the stops (by its own formula).
    Falloff falloff = new Falloff(-2, 0, 1, null);
    VignetteFormula formula = new VignetteFormula(falloff, 0, 0, 6, 8, 1);
    Close.check("half way", formula.factor(2.5, 3.5 + 2.5), 0.5, 1e-12);
  }
}
