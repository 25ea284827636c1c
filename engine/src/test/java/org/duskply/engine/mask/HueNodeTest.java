package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskply.engine.mask.MaskRows.SRGB;
import static org.duskply.engine.mask.MaskRows.row;

import org.duskply.engine.colour.HueWindow;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.junit.jupiter.api.Test;

/** A mask of hues: where it is, not how its window is computed. */
class HueNodeTest {
  private static final FrameNode ANY = MaskRows.frame(1, 4, 4, 3);

  /**
   * sRGB colours and their hues in Oklab with the matrices of CSS Color 4, computed outside the
   * project by two libraries that agree.
   */
  private static final double[][] KNOWN = {
    {1, 0, 0, 29.23388},
    {0, 1, 0, 142.49535},
    {0, 0, 1, 264.05202},
    {0.2, 0.6, 0.4, 157.55716},
    {0.9, 0.45, 0.1, 51.11566},
    {0.05, 0.1, 0.3, 267.71036},
    {0.6, 0.55, 0.4, 91.80979}
  };

  private static HueNode node(double centre, double width, double soft) {
    return new HueNode(ANY, HueWindow.of(Oklab.of(SRGB), centre, width, soft), "test");
  }

  private static float[][] pixel(double[] srgb) {
    float[][] pixel = new float[3][1];
    for (int c = 0; c < 3; c++) {
      pixel[c][0] = (float) EncodedAxis.decode(srgb[c]);
    }
    return pixel;
  }

  @Test
  void knownColoursAreWhereTheirHueIs() {
    for (double[] known : KNOWN) {
      float[][] pixel = pixel(known);
      double hue = known[3];
      assertThat(row(node(hue, 0.4, 0), pixel)[0]).as("hue %f", hue).isEqualTo(1);
      assertThat(row(node(hue - 360, 0.4, 0), pixel)[0]).isEqualTo(1);
      assertThat(row(node(hue + 1, 1.6, 0), pixel)[0]).isZero();
      assertThat(row(node(hue - 1, 1.6, 0), pixel)[0]).isZero();
      assertThat(row(node(hue + 40, 60, 20), pixel)[0]).isBetween(0.01f, 0.99f);
    }
  }

  @Test
  void greyHasNoHueAndWhatIsNotCoveredNeither() {
    assertThat(row(node(0, 360, 0), pixel(new double[] {0.5, 0.5, 0.5}))[0]).isZero();
    float[][] red = pixel(KNOWN[0]);
    assertThat(row(node(29, 20, 0), red[0], red[1], red[2], new float[] {0.25f})[0])
        .isEqualTo(0.25f);
  }
}
