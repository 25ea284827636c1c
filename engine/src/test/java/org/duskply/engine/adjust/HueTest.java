package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Saturation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Hues turned, strengthened and lightened. */
class HueTest extends AdjustKernelContract {
  private static final Oklab OKLAB = OklabBound.OKLAB;
  private static final double UNIT = OklabBound.UNIT;

  @Override
  protected List<Case> cases() {
    return Stream.of(
            everywhere(-6, 1.15, 0),
            everywhere(180, 1, 0),
            everywhere(0, 0, 0.02),
            everywhere(90, 4, -0.3),
            new Hue(-6, 1.15, 0.01, 260.0, 70.0, 20.0),
            new Hue(120, 0, -0.2, 30.0, 180.0, 90.0),
            new Hue(-180, 2, 0.1, -40.0, 340.0, 40.0),
            new Hue(15, 1.3, 0, 100.0, 360.0, 0))
        .map(hue -> new Case(hue.toString(), Working.kernel(hue), formula(hue), bound(hue)))
        .toList();
  }

  private static Hue everywhere(double turn, double chroma, double lightness) {
    return new Hue(turn, chroma, lightness, null, null, 0);
  }

  private static double weight(Hue hue, double a, double b) {
    Double centre = hue.centre();
    Double width = hue.width();
    return centre == null || width == null ? 1 : HueWeight.of(centre, width, hue.soft(), a, b);
  }

  /** By way of Lightness, chroma and hue angle, as the definition says. */
  private static Formula formula(Hue hue) {
    return (red, green, blue) -> {
      double[] lab = OKLAB.lab(red, green, blue);
      double w = weight(hue, lab[1], lab[2]);
      double chroma = Math.hypot(lab[1], lab[2]) * (1 + (hue.chroma() - 1) * w);
      double angle = Math.atan2(lab[2], lab[1]) + Math.toRadians(hue.turn() * w);
      double light = lab[0] + hue.lightness() * w;
      return OKLAB.rgb(light, chroma * Math.cos(angle), chroma * Math.sin(angle));
    };
  }

  /**
   * See {@link OklabBound}. Lab is off by what LAB_OF_ROOTS makes of the roots' errors and 4u of
   * its parts; the weight by the slopes of its two smooth ways, 1.5 over their length, times what t
   * and C are off; the new Lab by the strength times that of a and b together, by what the weight
   * does to angle, strength and lightness, and by 4u; the new roots by what ROOTS_OF_LAB makes of
   * it and 4u.
   */
  private static Bound bound(Hue hue) {
    return (in, want) -> {
      OklabBound.Roots roots = OklabBound.Roots.of(in);
      double ofLab = OklabBound.widestRow(Oklab.labOfRoots());
      double offLab = ofLab * (roots.off() + 4 * UNIT * roots.greatest());
      double[] lab = OKLAB.lab(in[0], in[1], in[2]);
      double chroma = Math.hypot(lab[1], lab[2]);
      double offWeight = offWeight(hue, chroma, offLab);
      double strength = Math.max(1, hue.chroma());
      double turn = Math.abs(Math.toRadians(hue.turn()));
      double byWeight = (Math.abs(hue.chroma() - 1) + strength * turn) * chroma;
      double offNew =
          2 * strength * offLab
              + (byWeight + Math.abs(hue.lightness())) * offWeight
              + 4 * UNIT * strength * (chroma + Math.abs(lab[0]) + 1);
      double toRoots = OklabBound.widestRow(Oklab.rootsOfLab());
      double size = Math.abs(lab[0]) + Math.abs(hue.lightness()) + strength * chroma;
      double off = toRoots * (offNew + 4 * UNIT * size);
      return new OklabBound.Roots(toRoots * size, off).ofColour();
    };
  }

  private static double offWeight(Hue hue, double chroma, double offLab) {
    Double width = hue.width();
    if (width == null) {
      return 0;
    }
    double none = Math.cos(Math.toRadians(Math.min(180, width / 2 + hue.soft())));
    double all = Math.cos(Math.toRadians(width / 2));
    double offT = 4 * offLab / Math.max(0.01, chroma) + 0x1p-22;
    double byHue = all > none ? 1.5 * offT / (all - none) : 0;
    return Math.min(1, byHue + 1.5 * 2 * offLab / 0.02 + 4 * UNIT);
  }

  /**
   * Oklab of sRGB colours with the matrices of CSS Color 4 as lightness, chroma and hue, computed
   * with two independent libraries. Turned by 20 degrees, and 1.1 times as strong.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0, 0.6279554, 0.2576833, 29.23388",
    "0.2, 0.6, 0.4, 0.6108852, 0.1220642, 157.55716",
    "0.9, 0.45, 0.1, 0.6768642, 0.1679819, 51.11566",
    "0.05, 0.1, 0.3, 0.2429454, 0.0956359, 267.71036"
  })
  void turnsPublishedHues(
      double r, double g, double b, double lightness, double chroma, double hue) {
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    for (Hue turned : List.of(everywhere(20, 1.1, 0.01), new Hue(20, 1.1, 0.01, hue, 10.0, 5.0))) {
      float[] red = {(float) EncodedAxis.decode(r)};
      float[] green = {(float) EncodedAxis.decode(g)};
      float[] blue = {(float) EncodedAxis.decode(b)};
      Adjustments.prepare(List.of(turned), srgb).run(red, green, blue, 0, 1);
      double[] lab = Oklab.of(srgb).lab(red[0], green[0], blue[0]);
      double angle = Math.toRadians(hue + 20);
      // Seven digits printed, five of the angle, and 2e-6 of the float matrices.
      Close.within("lightness", lab[0], lightness + 0.01, 3e-6);
      Close.within("a", lab[1], 1.1 * chroma * Math.cos(angle), 3e-6);
      Close.within("b", lab[2], 1.1 * chroma * Math.sin(angle), 3e-6);
    }
  }

  @Test
  void whatIsOutsideTheRangeKeepsItsBits() {
    float[][] p = {{0.5f, 0.18f, 0f, 1e-9f}, {0.1f, 0.18f, 0f, 3e-8f}, {0.05f, 0.18f, 0f, -1e-9f}};
    float[][] out = {p[0].clone(), p[1].clone(), p[2].clone()};
    Working.kernel(new Hue(30, 2, 0.2, 260.0, 60.0, 20.0)).run(out[0], out[1], out[2], 0, 4);
    assertThat(Bits.sha256(out)).isEqualTo(Bits.sha256(p));
  }

  @Test
  void plusTurnsFromRedTowardsYellow() {
    float[][] red = {{0.4f}, {0.05f}, {0.05f}};
    Working.kernel(everywhere(40, 1, 0)).run(red[0], red[1], red[2], 0, 1);
    assertThat(red[1][0]).isGreaterThan(2 * red[2][0]).isGreaterThan(0.05f);
  }

  @Test
  void chromaAloneIsSaturation() {
    float[][] a = {{0.4f, 0.02f}, {0.05f, 0.3f}, {0.05f, 0.7f}};
    float[][] b = {a[0].clone(), a[1].clone(), a[2].clone()};
    Working.kernel(everywhere(0, 1.4, 0)).run(a[0], a[1], a[2], 0, 2);
    Working.kernel(new Saturation(1.4)).run(b[0], b[1], b[2], 0, 2);
    for (int p = 0; p < 3; p++) {
      Close.check("channel " + p, a[p], new double[] {b[p][0], b[p][1]}, 4e-6);
    }
  }

  /** Grey stays grey whatever is turned; what is added to lightness is added to all three. */
  @Test
  void greyStaysGrey() {
    float[][] p = {{0f, 0.18f, 1f}, {0f, 0.18f, 1f}, {0f, 0.18f, 1f}};
    Working.kernel(everywhere(75, 3, 0.1)).run(p[0], p[1], p[2], 0, 3);
    for (int i = 0; i < 3; i++) {
      double root = Math.cbrt(new double[] {0, 0.18, 1}[i]) + 0.1;
      for (int c = 0; c < 3; c++) {
        // Rows of the matrices sum to what they should within 2⁻²³ of their parts.
        double rows = OklabBound.widestRow(Oklab.rootsOfLab()) * 3;
        rows *= OklabBound.widestRow(Oklab.labOfRoots());
        double off = rows * 0x1p-23 * (root + 0.1);
        double room = OklabBound.widestRow(OKLAB.fromLms()) * 3 * root * root * off;
        Close.within("grey", p[c][i], root * root * root, room + 1e-7);
      }
    }
  }
}
