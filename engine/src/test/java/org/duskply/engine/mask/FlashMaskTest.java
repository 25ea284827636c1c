package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskply.engine.mask.MaskRows.SRGB;

import java.util.Arrays;
import java.util.Random;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.reference.HueWeight;
import org.junit.jupiter.api.Test;

/** Where a flash reached, against its formula in double over frames of noise. */
class FlashMaskTest {
  private static final int WIDTH = 43;
  private static final int HEIGHT = 31;
  private static final Region CANVAS = Region.ofSize(WIDTH, HEIGHT);
  private static final double OVER = 0.5;

  private static Node mask(FrameNode flash, FrameNode ambient) {
    Node stops = new FlashRatioNode(flash, ambient, SRGB.luminance());
    return new FlashReachNode(new MedianNode(stops, CANVAS), OVER);
  }

  private static double stops(Planes flash, Planes ambient, int x, int y) {
    double[] w = SRGB.luminance();
    double lit = 0;
    double unlit = 0;
    int i = flash.at(Math.max(0, Math.min(WIDTH - 1, x)), Math.max(0, Math.min(HEIGHT - 1, y)));
    for (int p = 0; p < 3; p++) {
      lit += w[p] * flash.plane(p)[i];
      unlit += w[p] * ambient.plane(p)[i];
    }
    double noise = Math.scalb(1.0, -10);
    double ratio = (Math.max(lit, 0) + noise) / (Math.max(unlit, 0) + noise);
    double covered = flash.count() > 3 ? flash.plane(3)[i] : 1;
    return Math.log(ratio) / Math.log(2) * covered;
  }

  @Test
  void agreesWithTheFormulaUpToTheBorder() {
    for (int channels : new int[] {3, 4}) {
      FrameNode flash = MaskRows.frame(5, WIDTH, HEIGHT, channels);
      FrameNode ambient = MaskRows.frame(6, WIDTH, HEIGHT, 3);
      Planes lit = MaskRows.evaluate(flash, CANVAS);
      Planes unlit = MaskRows.evaluate(ambient, CANVAS);
      Planes got = MaskRows.evaluate(mask(flash, ambient), CANVAS);
      double[] window = new double[25];
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH; x++) {
          for (int i = 0; i < 25; i++) {
            window[i] = stops(lit, unlit, x - 2 + i % 5, y - 2 + i / 5);
          }
          Arrays.sort(window);
          double want = HueWeight.smooth(OVER / 2, OVER, window[12]);
          // Stops within 2⁻²⁰ (luminances and their sum with ν are within 2⁻²² each); the slope of
          // smooth is 1.5 over half of OVER.
          Close.within(x + "," + y, got.plane(0)[got.at(x, y)], want, 1.5 / (OVER / 2) * 0x1p-20);
        }
      }
    }
  }

  /** A stop is twice the light (ISO 2720, exposure value): half a stop over shows fully. */
  @Test
  void halfAStopMoreLightShowsFullyAndAQuarterNotAtAll() {
    double[] exact = {0.25, 0.5, 0.25};
    FrameNode any = MaskRows.frame(1, 4, 4, 3);
    float[] stops = {0f, 0.2f, 0.26f, 0.49f, 0.51f, 2f};
    float[] lit = new float[6];
    float[] unlit = new float[6];
    Arrays.fill(unlit, 0.25f);
    for (int i = 0; i < 6; i++) {
      lit[i] =
          (float) ((0.25 + Math.scalb(1.0, -10)) * Math.pow(2, stops[i]) - Math.scalb(1.0, -10));
    }
    float[] q = new float[6];
    new FlashRatioNode(any, any, exact)
        .row(
            new float[][][] {{lit, lit, lit}, {unlit, unlit, unlit}},
            new float[][] {q},
            0,
            0,
            0,
            6);
    for (int i = 0; i < 6; i++) {
      Close.within("stops " + stops[i], q[i], stops[i], 1e-6);
    }
    float[] m = new float[6];
    new FlashReachNode(any, OVER).row(new float[][][] {{q}}, new float[][] {m}, 0, 0, 0, 6);
    assertThat(m[0]).isZero();
    assertThat(m[1]).isZero();
    assertThat(m[2]).isBetween(0f, 0.1f);
    assertThat(m[3]).isBetween(0.9f, 1f);
    assertThat(m[4]).isEqualTo(1);
    assertThat(m[5]).isEqualTo(1);
  }

  @Test
  void anyRectangleHasTheBitsOfTheWhole() {
    Node mask = mask(MaskRows.frame(7, WIDTH, HEIGHT, 3), MaskRows.frame(8, WIDTH, HEIGHT, 4));
    Planes whole = MaskRows.evaluate(mask, CANVAS);
    Random random = new Random(2);
    for (int i = 0; i < 20; i++) {
      int left = random.nextInt(WIDTH);
      int top = random.nextInt(HEIGHT);
      Region part =
          new Region(left, top, left + 1 + random.nextInt(20), top + 1 + random.nextInt(9));
      PictureBits.same(whole, MaskRows.evaluate(mask, part.meet(CANVAS)), "part " + part);
    }
  }
}
