package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskply.engine.mask.MaskRows.SRGB;
import static org.duskply.engine.mask.MaskRows.row;

import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Edges;
import org.duskply.engine.testing.Lcg;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.recipe.mask.LuminanceRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A mask of brightness against its formula in double. */
class LuminanceNodeTest {
  private static final FrameNode ANY = MaskRows.frame(1, 4, 4, 3);

  private static LuminanceNode node(@Nullable Double from, @Nullable Double to, double soft) {
    return new LuminanceNode(ANY, new LuminanceRange(from, to, soft, null), SRGB.luminance());
  }

  private static double reference(
      @Nullable Double from, @Nullable Double to, double soft, double r, double g, double b) {
    double[] w = SRGB.luminance();
    double v = EncodedAxis.encode(w[0] * r + w[1] * g + w[2] * b);
    double slack = Math.scalb(1.0, -20);
    double dark = from == null ? 1 : HueWeight.smooth(from - slack - soft, from - slack, v);
    double bright = to == null ? 1 : 1 - HueWeight.smooth(to + slack, to + slack + soft, v);
    return dark * bright;
  }

  @Test
  void agreesWithTheFormula() {
    Lcg noise = new Lcg(3);
    Double[][] bounds = {{null, 0.25}, {0.6, null}, {0.2, 0.7}, {0.5, 0.5}, {0.0, 1.0}, {1.0, 3.0}};
    for (Double[] bound : bounds) {
      for (double soft : new double[] {0.05, 0.1, 0.7}) {
        LuminanceNode node = node(bound[0], bound[1], soft);
        check(node, bound, soft, noise.samples(4000, -0.1, 1.3), noise);
        check(node, bound, soft, Edges.values(), noise);
      }
    }
  }

  private static void check(
      LuminanceNode node, Double[] bound, double soft, float[] red, Lcg noise) {
    float[] green = noise.samples(red.length, 0, 1.1);
    float[] blue = noise.samples(red.length, -0.02, 2);
    float[] got = row(node, red, green, blue);
    for (int i = 0; i < red.length; i++) {
      double want = reference(bound[0], bound[1], soft, red[i], green[i], blue[i]);
      // v is within 0.02/65535 and what the three rounded products of Y (3·2⁻²⁴ of the greatest
      // part, on a slope of 12.92 at most) add; the slope of each side is 1.5/soft.
      double parts = 0.3 * Math.abs(red[i]) + 0.8 * green[i] + 0.1 * Math.abs(blue[i]);
      double v = 0.02 / 65535 + 13 * 4 * 0x1p-24 * parts + 4 * 0x1p-23;
      Close.within("at " + red[i], got[i], want, 2 * 1.5 / soft * v + 0x1p-22);
    }
  }

  /** Y of the primaries by the matrix of CSS Color 4 for sRGB, second row. */
  @Test
  void greenIsBrighterThanRedThanBlue() {
    double[] y = {87098.0 / 409605, 175762.0 / 245763, 12673.0 / 175545};
    for (int c = 0; c < 3; c++) {
      float[][] pixel = new float[3][1];
      pixel[c][0] = 1;
      double v = EncodedAxis.encode(y[c]);
      assertThat(row(node(v - 1e-4, v + 1e-4, 0), pixel)[0]).isEqualTo(1);
      assertThat(row(node(v + 1e-4, null, 0), pixel)[0]).isZero();
      assertThat(row(node(null, v - 1e-4, 0), pixel)[0]).isZero();
    }
  }

  @Test
  void aBoundIsInsideToTheCode() {
    for (int code = 0; code < 65536; code += 51) {
      double v = code / 65535.0;
      float grey = (float) EncodedAxis.decode(v);
      float[][] pixel = {{grey}, {grey}, {grey}};
      assertThat(row(node(v, v, 0), pixel)[0]).as("code %d", code).isEqualTo(1);
      assertThat(row(node(v + 1 / 65535.0, null, 0), pixel)[0]).isZero();
      assertThat(row(node(null, v - 1 / 65535.0 + 1e-12, 0), pixel)[0]).isZero();
    }
  }

  @Test
  void whatAFrameDoesNotCoverHasNoBrightness() {
    float[] half = {0.5f, 0.5f, 0.5f};
    float[] got = row(node(0.1, null, 0), half, half, half, new float[] {0, 0.25f, 1});
    assertThat(got).containsExactly(0, 0.25f, 1);
  }
}
