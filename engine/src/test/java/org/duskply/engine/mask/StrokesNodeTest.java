package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Stroke;
import org.duskply.recipe.mask.Strokes;
import org.junit.jupiter.api.Test;

/** Strokes of a brush against the plain formula over every point of every stroke. */
class StrokesNodeTest {
  private static final Region CANVAS = Region.ofSize(120, 90);

  private static StrokesNode node(List<Stroke> strokes, double scale) {
    return StrokesNode.of(new Strokes(strokes), new Ground(120 / scale, 90 / scale, scale, CANVAS));
  }

  private static Stroke stroke(double radius, double soft, double strength, double... xy) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      points.add(new Point(xy[i], xy[i + 1]));
    }
    return new Stroke(points, radius, soft, strength);
  }

  private static List<Stroke> random(long seed) {
    Random random = new Random(seed);
    List<Stroke> strokes = new ArrayList<>();
    for (int s = 0; s < 1 + random.nextInt(5); s++) {
      double[] xy = new double[2 * (1 + random.nextInt(6))];
      for (int i = 0; i < xy.length; i++) {
        // On whole pixels now and then, so that pieces are level, upright or of no length.
        double place = random.nextDouble() * 160 - 20;
        xy[i] = random.nextBoolean() ? Math.rint(place / 20) * 20 : place;
      }
      double soft = random.nextInt(3) / 2.0;
      strokes.add(stroke(0.3 + random.nextInt(30), soft, random.nextInt(4) / 3.0, xy));
    }
    return strokes;
  }

  /** By the nearest of many points along the way, or of the ends of its foot: distances alone. */
  private static double reference(List<Stroke> strokes, double scale, double x, double y) {
    double rest = 1;
    for (Stroke stroke : strokes) {
      double nearest = Double.POSITIVE_INFINITY;
      List<Point> points = stroke.points();
      for (int i = 0; i < points.size(); i++) {
        Point a = points.get(i);
        Point b = points.get(Math.min(i + 1, points.size() - 1));
        nearest = Math.min(nearest, distance(a, b, scale, x, y));
      }
      double r = stroke.radius() * scale;
      double v = 1 - HueWeight.smooth(r * (1 - stroke.soft()) - 0.5, r + 0.5, nearest);
      rest *= 1 - stroke.strength() * v;
    }
    return 1 - rest;
  }

  /** To the line where the foot lies between the ends, else to the nearer end. */
  private static double distance(Point a, Point b, double scale, double x, double y) {
    double dx = (b.x() - a.x()) * scale;
    double dy = (b.y() - a.y()) * scale;
    double ax = x - a.x() * scale;
    double ay = y - a.y() * scale;
    double length = Math.hypot(dx, dy);
    double along = length == 0 ? 0 : (ax * dx + ay * dy) / length;
    if (along > 0 && along < length) {
      return Math.abs(ax * dy - ay * dx) / length;
    }
    return Math.min(Math.hypot(ax, ay), Math.hypot(x - b.x() * scale, y - b.y() * scale));
  }

  @Test
  void agreesWithTheFormula() {
    for (int seed = 0; seed < 40; seed++) {
      for (double scale : new double[] {1, 0.37}) {
        List<Stroke> strokes = random(seed);
        Planes got = MaskRows.evaluate(node(strokes, scale), CANVAS.grow(25));
        for (int y = got.area().top(); y < got.area().bottom(); y++) {
          for (int x = got.area().left(); x < got.area().right(); x++) {
            double want = reference(strokes, scale, x + 0.5, y + 0.5);
            // Double on both sides, rounded once to float.
            Close.within(seed + ": " + x + "," + y, got.plane(0)[got.at(x, y)], want, 0x1p-24);
          }
        }
      }
    }
  }

  @Test
  void anyRectangleHasTheBitsOfTheWholeAndNothingLiesOutsideTheFootprint() {
    for (int seed = 0; seed < 40; seed++) {
      StrokesNode node = node(random(seed), 1);
      Region wide = CANVAS.grow(25);
      Planes whole = MaskRows.evaluate(node, wide);
      Random random = new Random(seed);
      for (int i = 0; i < 10; i++) {
        int left = wide.left() + random.nextInt(wide.width());
        int top = wide.top() + random.nextInt(wide.height());
        Region part =
            new Region(left, top, left + 1 + random.nextInt(60), top + 1 + random.nextInt(20))
                .meet(wide);
        PictureBits.same(whole, MaskRows.evaluate(node, part), "seed " + seed + " " + part);
        Region shown = node.footprint(part);
        for (int y = part.top(); y < part.bottom(); y++) {
          for (int x = part.left(); x < part.right(); x++) {
            assertThat(shown.contains(x, y) || whole.plane(0)[whole.at(x, y)] == 0).isTrue();
          }
        }
      }
    }
  }

  /** A row of a long slanting stroke needs few columns: frames under it are read in few places. */
  @Test
  void footprintsFollowTheStroke() {
    StrokesNode node = node(List.of(stroke(2, 0, 1, 0, 0, 1000, 1000)), 1);
    Region shown = node.footprint(new Region(0, 500, 1000, 510));
    assertThat(shown.left()).isBetween(480, 498);
    assertThat(shown.right()).isBetween(512, 530);
    assertThat(node.footprint(new Region(0, 1100, 1000, 1200))).isEqualTo(Region.EMPTY);
  }

  @Test
  void aHardDabHasTheAreaOfADisc() {
    StrokesNode node = node(List.of(stroke(20, 0, 1, 60.3, 44.8)), 1);
    double sum = 0;
    for (float v : MaskRows.evaluate(node, CANVAS).plane(0)) {
      sum += v;
    }
    // The ramp of one pixel about the radius is symmetrical, so that the area is πr² up to what the
    // curvature of the ring (πw²·const, w = ½) and the pixel raster leave: well under one pixel.
    assertThat(sum).isBetween(Math.PI * 400 - 1, Math.PI * 400 + 1);
  }

  @Test
  void strokesAddUpAsLayersOfPaint() {
    Stroke half = stroke(10, 0, 0.5, 30, 30);
    Planes once = MaskRows.evaluate(node(List.of(half), 1), CANVAS);
    Planes thrice = MaskRows.evaluate(node(List.of(half, half, half), 1), CANVAS);
    assertThat(once.plane(0)[once.at(30, 30)]).isEqualTo(0.5f);
    assertThat(thrice.plane(0)[thrice.at(30, 30)]).isEqualTo(0.875f);
    // One stroke that passes twice over a place covers it once.
    Stroke back = stroke(10, 0, 0.5, 20, 30, 40, 30, 20, 30);
    Planes passed = MaskRows.evaluate(node(List.of(back), 1), CANVAS);
    assertThat(passed.plane(0)[passed.at(30, 30)]).isEqualTo(0.5f);
  }

  @Test
  void strokesThatWouldTakeForeverAreRefused() {
    double[] xy = new double[20_000];
    List<Stroke> strokes = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      strokes.add(stroke(10_000, 0, 1, xy));
    }
    assertThatThrownBy(() -> node(strokes, 1))
        .isInstanceOf(DuskplyException.class)
        .hasMessageContaining("4 billion pixels");
  }
}
