package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.PathData;
import org.duskply.recipe.mask.Point;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Areas of pixels inside outlines: exact where a fraction is known, the same bits in any window.
 */
class OutlineRasterTest {
  /** An area of a pixel is held in float: half an ulp of 1, and the quantum of heights. */
  private static final double EXACT = 1e-7;

  private static OutlineRaster polygon(FillRule rule, double... coordinates) {
    return OutlineRaster.of(Outline.ofPolygon(Outlines.points(coordinates), 1), rule);
  }

  private static OutlineRaster path(String data, FillRule rule) {
    return OutlineRaster.of(Flattener.flatten(PathData.parse(data), 1), rule);
  }

  private static float[] filled(OutlineRaster raster, Region area) {
    float[] samples = new float[(int) area.count()];
    raster.fill(area, samples);
    return samples;
  }

  private static double sum(float[] samples) {
    double sum = 0;
    for (float v : samples) {
      sum += v;
    }
    return sum;
  }

  private static void check(OutlineRaster raster, double... expected) {
    float[] got = filled(raster, Region.ofSize(4, 4));
    for (int i = 0; i < 16; i++) {
      assertThat((double) got[i]).as("pixel " + i).isCloseTo(expected[i], within(EXACT));
      if (expected[i] == 0 || expected[i] == 1) {
        assertThat(got[i]).as("pixel " + i).isEqualTo((float) expected[i]);
      }
    }
  }

  /** Expected areas: exact rational clipping, computed outside this project. */
  @ParameterizedTest
  @EnumSource(FillRule.class)
  void areasAreTheFractionsOfRationalClipping(FillRule rule) {
    check(polygon(rule, 0, 0, 4, 0, 0, 4), 1, 1, 1, .5, 1, 1, .5, 0, 1, .5, 0, 0, .5, 0, 0, 0);
    check(
        polygon(rule, .5, .5, 3.5, 1, 1, 3.25),
        109 / 528.0,
        1 / 3.0,
        1 / 6.0,
        1 / 48.0,
        7 / 22.0,
        1,
        599 / 720.0,
        9 / 80.0,
        3 / 22.0,
        551 / 720.0,
        49 / 720.0,
        0,
        1 / 176.0,
        5 / 144.0,
        0,
        0);
    check(
        polygon(rule, .25, .5, 2.75, .5, 2.75, 2.25, .25, 2.25),
        3 / 8.0,
        1 / 2.0,
        3 / 8.0,
        0,
        3 / 4.0,
        1,
        3 / 4.0,
        0,
        3 / 16.0,
        1 / 4.0,
        3 / 16.0,
        0,
        0,
        0,
        0,
        0);
  }

  /**
   * Circle of radius 1.5: quadrature outside this project (scipy, 1e-12). A chord leaves the circle
   * by at most the flattening tolerance, along at most √2 px in a pixel, always to the inside.
   */
  @Test
  void aCircleCoversWhatQuadratureSays() {
    OutlineRaster circle = path("M.5 2A1.5 1.5 0 013.5 2A1.5 1.5 0 01.5 2Z", FillRule.NONZERO);
    float[] got = filled(circle, Region.ofSize(4, 4));
    double corner = 0.0072246524;
    double edge = 0.3799606076;
    double[] expected = {corner, edge, edge, corner, edge, 1, 1, edge};
    for (int i = 0; i < 8; i++) {
      assertThat(expected[i] - got[i]).isBetween(-EXACT, Flattener.TOLERANCE * Math.sqrt(2));
      assertThat(got[15 - i]).isCloseTo(got[i], within((float) EXACT));
    }
  }

  /** Pentagram: windings at five places, computed outside this project from SVG 2 "fill-rule". */
  @Test
  void theRuleSaysWhatIsInsideAStar() {
    double[] star = {
      5, 0, 7.938926, 9.045085, 0.244717, 3.454915, 9.755283, 3.454915, 2.061074, 9.045085
    };
    double scale = 20;
    List<Point> corners = Outlines.points(star);
    Region area = Region.ofSize(200, 200);
    Planes nonzero = new Planes(area, 1);
    Planes evenOdd = new Planes(area, 1);
    OutlineRaster.of(Outline.ofPolygon(corners, scale), FillRule.NONZERO).fill(nonzero, 0);
    OutlineRaster.of(Outline.ofPolygon(corners, scale), FillRule.EVENODD).fill(evenOdd, 0);
    double[][] places = {{5, 5, 2}, {5, 1.5, 1}, {2.2, 4, 1}, {8, 1, 0}, {5, 9, 0}};
    for (double[] place : places) {
      int at = nonzero.at((int) (place[0] * scale), (int) (place[1] * scale));
      assertThat(nonzero.plane(0)[at]).isEqualTo(place[2] != 0 ? 1f : 0f);
      assertThat(evenOdd.plane(0)[at]).isEqualTo(place[2] == 1 ? 1f : 0f);
    }
  }

  /** SVG 2 "fill-rule": a square in a square, both ways round. */
  @Test
  void aHoleIsAHoleByItsDirection() {
    String same = "M0 0H4V4H0Z M1 1H3V3H1Z";
    String opposite = "M0 0H4V4H0Z M1 1V3H3V1Z";
    assertThat(sum(filled(path(same, FillRule.NONZERO), Region.ofSize(5, 5)))).isEqualTo(16);
    assertThat(sum(filled(path(same, FillRule.EVENODD), Region.ofSize(5, 5)))).isEqualTo(12);
    assertThat(sum(filled(path(opposite, FillRule.NONZERO), Region.ofSize(5, 5)))).isEqualTo(12);
    assertThat(sum(filled(path(opposite, FillRule.EVENODD), Region.ofSize(5, 5)))).isEqualTo(12);
  }

  @Test
  void aBowTieInsideOnePixelHasTheAreaOfBothWings() {
    // Signed areas would cancel to 0.
    float[] got =
        filled(polygon(FillRule.NONZERO, .1, .1, .9, .9, .9, .1, .1, .9), Region.ofSize(1, 1));
    assertThat(got[0]).isCloseTo(0.32f, within((float) EXACT));
  }

  @Test
  void overlappingContoursCountOnceOrNotAtAll() {
    String twice = "M.25 0H2V2H.25Z M.75 0H3V2H.75Z";
    assertThat(filled(path(twice, FillRule.NONZERO), Region.ofSize(3, 1)))
        .containsExactly(.75f, 1f, 1f);
    assertThat(filled(path(twice, FillRule.EVENODD), Region.ofSize(3, 1)))
        .containsExactly(.5f, 0f, 1f);
    assertThat(filled(path("M0 0H2V2H0Z M0 0H2V2H0Z", FillRule.EVENODD), Region.ofSize(3, 2)))
        .containsOnly(0f);
  }

  @Test
  void contoursThatShareAnEdgeLeaveNoSeam() {
    String two = "M0 0L2.3 0L1.1 4L0 4Z M2.3 0L4 0L4 4L1.1 4Z";
    assertThat(filled(path(two, FillRule.NONZERO), Region.ofSize(4, 4))).containsOnly(1f);
    assertThat(filled(path(two, FillRule.EVENODD), Region.ofSize(4, 4))).containsOnly(1f);
  }

  @Test
  void wholeFarAndThinShapesAreExact() {
    OutlineRaster far = polygon(FillRule.NONZERO, -9e6, -9e6, 9e6, -9e6, 9e6, 9e6, -9e6, 9e6);
    assertThat(filled(far, new Region(-3, -3, 3, 3))).containsOnly(1f);
    OutlineRaster thin = polygon(FillRule.NONZERO, 0, 1e-10, 3, 0, 3, 1e-10);
    assertThat(filled(thin, Region.ofSize(3, 1))).containsOnly(0f);
    OutlineRaster flat = polygon(FillRule.NONZERO, 0, 1, 5, 1, 9, 1);
    assertThat(flat.bounds()).isEqualTo(Region.EMPTY);
    assertThat(filled(flat, Region.ofSize(3, 3))).containsOnly(0f);
    // All but horizontal over 4,000 px: half of the row's area, a straight ramp.
    float[] ramp = filled(polygon(FillRule.NONZERO, 0, 0, 4000, 1, 0, 1), Region.ofSize(4000, 1));
    for (int x = 0; x < 4000; x++) {
      assertThat((double) ramp[x]).isCloseTo(1 - (x + .5) / 4000, within(EXACT));
    }
  }

  @Property(seed = "31", tries = 60)
  void anyWindowHasTheBitsOfTheWhole(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    FillRule rule = random.nextBoolean() ? FillRule.NONZERO : FillRule.EVENODD;
    OutlineRaster raster = OutlineRaster.of(Outlines.random(random, 90), rule);
    Region whole = new Region(-20, -20, 110, 110);
    Planes all = new Planes(whole, 1);
    raster.fill(all, 0);
    for (int rows : new int[] {1, 7, 64}) {
      for (int y = whole.top(); y < whole.bottom(); y += rows) {
        expectSame(raster, all, whole.rows(y, Math.min(whole.bottom(), y + rows)));
      }
    }
    for (int i = 0; i < 20; i++) {
      int x = whole.left() + random.nextInt(whole.width());
      int y = whole.top() + random.nextInt(whole.height());
      expectSame(
          raster,
          all,
          new Region(x, y, x + 1 + random.nextInt(40), y + 1 + random.nextInt(40)).meet(whole));
    }
  }

  private static void expectSame(OutlineRaster raster, Planes all, Region window) {
    Planes cut = new Planes(window, 1);
    cut.copyFrom(all);
    assertThat(filled(raster, window)).isEqualTo(cut.plane(0));
  }

  @Property(seed = "33", tries = 100)
  void whatIsSaidToBeUniformIs(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    FillRule rule = random.nextBoolean() ? FillRule.NONZERO : FillRule.EVENODD;
    OutlineRaster raster = OutlineRaster.of(Outlines.random(random, 90), rule);
    int known = 0;
    for (int i = 0; i < 200; i++) {
      int x = random.nextInt(140) - 30;
      int y = random.nextInt(140) - 30;
      Region window = new Region(x, y, x + 1 + random.nextInt(12), y + 1 + random.nextInt(12));
      float uniform = raster.uniform(window);
      if (!Float.isNaN(uniform)) {
        known++;
        assertThat(filled(raster, window)).containsOnly(uniform);
      }
    }
    assertThat(known).isPositive();
  }

  /** Level edges are in no table of edges that cross rows, and divide a region all the same. */
  @Property(seed = "34", tries = 100)
  void levelEdgesAreNotOverlooked(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    Outline.Builder builder = new Outline.Builder();
    for (int shape = 0; shape < 1 + random.nextInt(3); shape++) {
      double left = -30 + random.nextInt(20);
      double right = 110 + random.nextInt(20);
      double top = random.nextInt(160) / 2.0;
      double bottom = top + 0.5 + random.nextInt(80) / 2.0;
      builder.add(left, top);
      builder.add(right, top);
      builder.add(right, bottom);
      if (random.nextBoolean()) { // down by a step
        double x = 20 + random.nextInt(60);
        builder.add(x, bottom);
        builder.add(x, bottom + 7);
        builder.add(left, bottom + 7);
      } else {
        builder.add(left, bottom);
      }
      builder.close();
    }
    OutlineRaster raster = OutlineRaster.of(builder.build(), FillRule.EVENODD);
    for (int i = 0; i < 100; i++) {
      int y = random.nextInt(90);
      int x = random.nextInt(80);
      Region window = new Region(x, y, x + 1 + random.nextInt(20), y + 1 + random.nextInt(40));
      float uniform = raster.uniform(window);
      if (!Float.isNaN(uniform)) {
        assertThat(filled(raster, window)).containsOnly(uniform);
      }
    }
  }

  @Test
  void theMiddleOfAShapeIsKnownToBeFull() {
    OutlineRaster raster = polygon(FillRule.NONZERO, 10, 10, 110, 10, 110, 110, 10, 110);
    assertThat(raster.uniform(new Region(12, 12, 108, 108))).isEqualTo(1f);
    assertThat(raster.uniform(new Region(0, 0, 8, 200))).isZero();
    assertThat(raster.uniform(new Region(112, 20, 200, 40))).isZero();
    assertThat(raster.uniform(new Region(0, 20, 20, 40))).isNaN();
  }

  @Property(seed = "32", tries = 100)
  void boundsHoldAllThatIsCoveredAndBandsAreTight(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    OutlineRaster raster = OutlineRaster.of(Outlines.random(random, 60), FillRule.NONZERO);
    Region whole = new Region(-40, -40, 100, 100);
    Planes all = new Planes(whole, 1);
    raster.fill(all, 0);
    int top = random.nextInt(60);
    Region band = raster.boundsWithin(top, top + 5);
    assertThat(raster.bounds().contains(band)).isTrue();
    for (int y = whole.top(); y < whole.bottom(); y++) {
      for (int x = whole.left(); x < whole.right(); x++) {
        if (all.plane(0)[all.at(x, y)] > 0) {
          assertThat(raster.bounds().contains(x, y)).isTrue();
          assertThat(y < top || y >= top + 5 || band.contains(x, y)).isTrue();
        }
      }
    }
  }

  @Test
  void aTriangleBandHasTheColumnsOfItsRows() {
    OutlineRaster raster = polygon(FillRule.NONZERO, 0, 0, 100, 0, 0, 100);
    assertThat(raster.bounds()).isEqualTo(Region.ofSize(100, 100));
    assertThat(raster.boundsWithin(50, 60)).isEqualTo(new Region(0, 50, 50, 60));
    assertThat(raster.boundsWithin(99, 300)).isEqualTo(new Region(0, 99, 1, 100));
    assertThat(raster.boundsWithin(100, 300)).isEqualTo(Region.EMPTY);
  }

  /** Where lines cross without end, the row is cut evenly: still near, and still the same bits. */
  @Test
  void aScribbleThatIsTooMuchStaysNearAndBounded() {
    Random random = new Random(5);
    List<Point> scribble = new ArrayList<>();
    for (int i = 0; i < 6_000; i++) {
      scribble.add(new Point(random.nextDouble() * 60, i % 2 == 0 ? 0 : 8));
    }
    OutlineRaster raster = OutlineRaster.of(Outline.ofPolygon(scribble, 1), FillRule.NONZERO);
    Region area = new Region(-1, -1, 61, 9);
    float[] got = filled(raster, area);
    // Thousands of lines over 60 px wind around nearly every point.
    assertThat(sum(got)).isBetween(60 * 8 * 0.9, 60 * 8.0);
    Planes all = new Planes(area, 1);
    raster.fill(all, 0);
    expectSame(raster, all, new Region(10, 3, 50, 5));
  }

  @Test
  void anOutlineThatCouldNotBeFilledInTimeIsRefused() {
    List<Point> saw = new ArrayList<>();
    for (int i = 0; i < 100_000; i++) {
      saw.add(new Point(i * .01, i % 2 == 0 ? 0 : 3_000));
    }
    assertThatThrownBy(() -> OutlineRaster.of(Outline.ofPolygon(saw, 1), FillRule.NONZERO))
        .isInstanceOf(DuskplyException.class)
        .hasMessageStartingWith("An outline runs up and down too often to be filled");
    assertThatThrownBy(() -> polygon(FillRule.NONZERO, 0, 0, 1, 0, 2e7, 3))
        .hasMessageContaining("16,777,216 pixels");
    assertThatThrownBy(() -> polygon(FillRule.NONZERO, 0, 0, Double.NaN, 0, 1, 3))
        .isInstanceOf(DuskplyException.class);
  }

  @Test
  @Tag("bits")
  void theBitsOfAStarAreTheseOnEveryMachine() {
    Outline outline = Outlines.random(new Random(77), 200);
    float[] got = filled(OutlineRaster.of(outline, FillRule.EVENODD), Region.ofSize(200, 200));
    String curve =
        "M20 20C200 10 10 190 180 180S90 60 30 150Q5 60 20 20ZM60 60a30 20 25 1 0 50 40z";
    float[] curved = filled(path(curve, FillRule.NONZERO), Region.ofSize(200, 200));
    assertThat(Outlines.hash(got)).isEqualTo(3917462691706560275L);
    assertThat(Outlines.hash(curved)).isEqualTo(-7510813981423571645L);
  }

  /** Teeth side by side all cross the same rows; one above the other, two at a time do. */
  @Test
  void anOutlineIsSimpleWhereEveryRowHasFewEdges() {
    assertThat(polygon(FillRule.NONZERO, 0, 0, 9, 0, 5, 30).simple()).isTrue();
    double[] teeth = new double[2 * 80];
    double[] lying = new double[teeth.length];
    for (int i = 0; i < teeth.length / 2; i++) {
      teeth[2 * i] = i;
      teeth[2 * i + 1] = i % 2 * 100;
      lying[2 * i] = teeth[2 * i + 1];
      lying[2 * i + 1] = teeth[2 * i];
    }
    assertThat(polygon(FillRule.NONZERO, teeth).simple()).isFalse();
    assertThat(polygon(FillRule.NONZERO, lying).simple()).isTrue();
    double[] spiked = Arrays.copyOf(teeth, teeth.length + 2);
    spiked[teeth.length] = 40;
    spiked[teeth.length + 1] = 1e6; // makes the average small, not the worst
    assertThat(polygon(FillRule.NONZERO, spiked).simple()).isFalse();
    assertThat(OutlineRaster.of(Outline.ofPolygon(List.of(), 1), FillRule.NONZERO).simple())
        .isTrue();
  }
}
