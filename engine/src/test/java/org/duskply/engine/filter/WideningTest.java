package org.duskply.engine.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.Close;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Outlines moved: bits first, then against the distance from every line of the level. */
class WideningTest {
  private static final double[] MOVES = {0.25, 1, 3.5, 12, -0.25, -1, -3.5, -12, 40};

  private static Fields.Filter filter(Widening widening) {
    return new Fields.Filter() {
      @Override
      public Region needs(Region out) {
        return widening.needs(out);
      }

      @Override
      public void apply(Planes in, int plane, Planes out, int outPlane) {
        widening.apply(in, out);
      }
    };
  }

  /** Soft blobs, hard blocks and single pixels: the kinds of level that a mask can have. */
  private static Fields.Field blobs(int seed) {
    return blobs(seed, new Random(seed).nextInt(4));
  }

  private static Fields.Field blobs(int seed, int kind) {
    double[] spots = new Random(seed).doubles(24).toArray();
    return (x, y) -> {
      double v = 0;
      for (int i = 0; i < 24; i += 3) {
        double dx = x - (spots[i] * 120 - 20);
        double dy = y - (spots[i + 1] * 120 - 20);
        double r = 2 + 16 * spots[i + 2];
        v = Math.max(v, 0.5 + (r - Math.sqrt(dx * dx + dy * dy)) / (kind == 1 ? 20 : 1));
      }
      if (kind == 2) {
        v =
            Math.floorMod(x / 7 + y / 5, 3) == 0
                ? 1
                : Math.floorMod(x * 7 + y * 13, 89) == 0 ? 1 : 0;
      }
      return (float) Math.max(0, Math.min(1, kind == 3 ? Math.rint(v) : v));
    };
  }

  @Property(seed = "81", tries = 40)
  @Tag("bits")
  void anyWindowHasTheBitsOfTheWhole(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    Widening widening = Widening.of(MOVES[random.nextInt(MOVES.length)]);
    int left = random.nextInt(60) - 30;
    int top = random.nextInt(60) - 30;
    Region whole = new Region(left, top, left + 70, top + 55);
    Fields.Field field = random.nextInt(4) == 0 ? Fields.noise(seed) : blobs(seed);
    Planes in = Fields.of(widening.needs(whole), field);
    Fields.expectSameInAnyWindow(filter(widening), in, whole, random);
  }

  /** A line of the level, from the definition in the class's comment alone. */
  private record Line(double x0, double y0, double x1, double y1) {
    double distance(double x, double y) {
      double dx = x1 - x0;
      double dy = y1 - y0;
      double square = dx * dx + dy * dy;
      double t = square == 0 ? 0 : ((x - x0) * dx + (y - y0) * dy) / square;
      t = Math.max(0, Math.min(1, t));
      double u = x0 + t * dx - x;
      double v = y0 + t * dy - y;
      return Math.sqrt(u * u + v * v);
    }
  }

  private static List<Line> level(Planes in) {
    List<Line> lines = new ArrayList<>();
    Region area = in.area();
    for (int y = area.top(); y + 1 < area.bottom(); y++) {
      for (int x = area.left(); x + 1 < area.right(); x++) {
        square(in, x, y, lines);
      }
    }
    return lines;
  }

  private static void square(Planes in, int x, int y, List<Line> lines) {
    double a = in.plane(0)[in.at(x, y)];
    double b = in.plane(0)[in.at(x + 1, y)];
    double c = in.plane(0)[in.at(x + 1, y + 1)];
    double d = in.plane(0)[in.at(x, y + 1)];
    List<double[]> met = new ArrayList<>();
    meet(a, b, x, y, 1, 0, met);
    meet(b, c, x + 1, y, 0, 1, met);
    meet(d, c, x, y + 1, 1, 0, met);
    meet(a, d, x, y, 0, 1, met);
    if (met.size() == 2) {
      lines.add(line(met.get(0), met.get(1)));
    } else if (met.size() == 4) {
      boolean centreInside = (a + b + c + d) / 4 >= 0.5;
      boolean cutOffB = centreInside == (a >= 0.5);
      lines.add(line(met.get(0), met.get(cutOffB ? 1 : 3)));
      lines.add(line(met.get(2), met.get(cutOffB ? 3 : 1)));
    }
  }

  private static void meet(
      double a, double b, double x, double y, int dx, int dy, List<double[]> met) {
    if (a >= 0.5 != b >= 0.5) {
      double in = Math.max(a, b);
      double out = Math.min(a, b);
      double fromIn = in - out >= 0.5 ? in + out - 0.5 : (in - 0.5) / (in - out);
      double t = a >= b ? fromIn : 1 - fromIn;
      met.add(new double[] {x + t * dx, y + t * dy});
    }
  }

  private static Line line(double[] a, double[] b) {
    return new Line(a[0], a[1], b[0], b[1]);
  }

  /**
   * The distance from all lines, one by one. The places are rounded to 1/1024 px (and kept that far
   * from a centre), twice at most in a distance; where two outlines are equally far the wrong one's
   * site may be taken, off by at most 1/(8d), but then by the rest of a segment alone.
   */
  @Property(seed = "82", tries = 30)
  void isTheDistanceFromTheLevel(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    double by = MOVES[random.nextInt(MOVES.length)];
    Widening widening = Widening.of(by);
    Region area = new Region(0, 0, 60, 60);
    Planes in = Fields.of(widening.needs(area), blobs(seed));
    Planes got = new Planes(area, 1);
    widening.apply(in, got);
    List<Line> lines = level(in);
    for (int y = 0; y < 60; y++) {
      for (int x = 0; x < 60; x++) {
        double distance = Double.MAX_VALUE;
        for (Line line : lines) {
          distance = Math.min(distance, line.distance(x, y));
        }
        boolean inside = in.plane(0)[in.at(x, y)] >= 0.5f;
        double want = Math.max(0, Math.min(1, 0.5 + by - (inside ? -distance : distance)));
        float value = got.plane(0)[got.at(x, y)];
        double tie = Math.min(0.21, 1 / (8 * Math.max(0.5, Math.abs(by) - 0.5)));
        Close.within(seed + " by " + by + " at " + x + ", " + y, value, want, 2.5 / 1024 + tie);
      }
    }
  }

  /** What is inside and what is outside change places. */
  @Property(seed = "83", tries = 20)
  void inwardIsOutwardOfTheRest(@ForAll @IntRange(max = 1_000_000) int seed) {
    double by = MOVES[new Random(seed).nextInt(MOVES.length)];
    Region area = new Region(-9, 4, 41, 44);
    Fields.Field field = blobs(seed, seed % 2);
    // A value of exactly ½ would be inside both ways, and hard pixels leave squares undecided.
    Fields.Field clear = (x, y) -> field.at(x, y) == 0.5f ? 0.5625f : field.at(x, y);
    Planes wider = new Planes(area, 1);
    Planes narrower = new Planes(area, 1);
    Widening.of(by).apply(Fields.of(Widening.of(by).needs(area), clear), wider);
    Widening.of(-by)
        .apply(Fields.of(Widening.of(by).needs(area), (x, y) -> 1 - clear.at(x, y)), narrower);
    for (int i = 0; i < wider.plane(0).length; i++) {
      // 1 − v is rounded, and with it the place of the level, by 1/1024 px at most.
      Close.within("pixel " + i, narrower.plane(0)[i], 1 - wider.plane(0)[i], 2.5 / 1024);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-500, -3, 0.1, 7, 500})
  void anEvenFieldStaysAsItIs(double by) {
    Widening widening = Widening.of(by);
    Region area = Region.ofSize(9, 5);
    for (float v : new float[] {0f, 0.4999f, 0.5f, 1f}) {
      Planes out = new Planes(area, 1);
      widening.apply(Fields.of(widening.needs(area), (x, y) -> v), out);
      assertThat(out.plane(0)).containsOnly(v >= 0.5f ? 1f : 0f);
    }
  }

  /**
   * An upright edge at a third of a pixel, by exact coverage, comes out exactly where it should.
   */
  @Test
  void anUprightEdgeIsMovedExactly() {
    Region area = new Region(-20, 0, 40, 3);
    for (double by : new double[] {-7.5, -0.25, 0.5, 6, 13.25}) {
      Widening widening = Widening.of(by);
      Planes out = new Planes(area, 1);
      // Covered right of x = 5⅓: pixel 5 by two thirds.
      widening.apply(
          Fields.of(widening.needs(area), (x, y) -> x < 5 ? 0 : x == 5 ? 2f / 3 : 1), out);
      for (int x = area.left(); x < area.right(); x++) {
        double edge = 5 + 1.0 / 3 - by;
        double want = Math.max(0, Math.min(1, x + 1 - edge));
        Close.within("x " + x + " by " + by, out.plane(0)[out.at(x, 1)], want, 1.0 / 1024);
      }
    }
  }

  @Test
  void whatItReadsAndTakesIsBounded() {
    Widening widening = Widening.of(-3.2);
    Region out = new Region(5, 6, 25, 16);
    assertThat(widening.needs(out)).isEqualTo(out.grow(8));
    assertThat(widening.needs(Region.EMPTY)).isEqualTo(Region.EMPTY);
    assertThat(widening.scratchBytes(Region.EMPTY)).isZero();
    // Rows about it: 10 + 2·6 of 20 pixels; columns about it: 20 + 2·6 of 10 pixels.
    assertThat(widening.scratchBytes(out)).isGreaterThanOrEqualTo(4 * 22 * 20);
    assertThatThrownBy(() -> Widening.of(4_001)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Widening.of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  @Tag("bits")
  void itsBitsAreTheseOnEveryMachine() {
    Region area = Region.ofSize(90, 80);
    Planes wider = new Planes(area, 1);
    Planes narrower = new Planes(area, 1);
    Widening.of(5.5).apply(Fields.of(Widening.of(5.5).needs(area), blobs(7)), wider);
    Widening.of(-2.25).apply(Fields.of(Widening.of(2.25).needs(area), Fields.noise(8)), narrower);
    assertThat(Bits.sha256(wider.plane(0), narrower.plane(0)))
        .isEqualTo("5324cf55e6593467b87f452e07f04c6099e40ef78aabfc9ac670c6e5a78679e2");
  }
}
