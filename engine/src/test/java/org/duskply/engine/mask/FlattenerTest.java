package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.batik.parser.AWTPathProducer;
import org.duskply.engine.DuskplyException;
import org.duskply.recipe.mask.PathData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Curves followed by chords, against Batik's path parser and closed forms. */
class FlattenerTest {
  // Batik keeps coordinates in float, 2⁻²⁴ of 100 px, is cut into chords here within 1e-4, and its
  // arcs are cubics good to 2.7e-4 of the radius.
  private static final double BATIK_ERROR = 2e-4;
  private static final double BATIK_ARC_ERROR = 3e-4;

  private static Outline flat(String data, double scale) {
    return Flattener.flatten(PathData.parse(data), scale);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "M10 20 30 40 50 60z",
        "m10 20 30 40 5-5.5.5.5",
        "M0 0C1 2 3 4 5 6S8 9 10 10",
        "M0 0Q5 10 10 0T20 0",
        "M5 5S10 10 20 0",
        "M0 0H10V10h-10z m5 5h1v3",
        "M0 0h10v4zl5 5 3-9",
        "M0 0C100 0 0 90 90 90 s-80-20-40-60",
        "M3 3q40-9 20 30t-9 3 -8-30Z M1 1c30 0 0 30 30 30"
      })
  void followsCurvesAsBatikReadsThem(String data) throws IOException {
    expectNear(flat(data, 1), batik(data), Flattener.TOLERANCE + BATIK_ERROR);
  }

  @Property(seed = "51", tries = 60)
  void followsArcsAsBatikReadsThem(@ForAll @IntRange(max = 1_000_000) int seed) throws IOException {
    Random random = new Random(seed);
    double rx = 25 + random.nextDouble() * 40;
    double ry = 25 + random.nextDouble() * 40;
    String data =
        String.format(
            Locale.ROOT,
            "M%.2f %.2fA%.2f %.2f %d %d %d %.2f %.2fL3 3Z",
            random.nextDouble() * 50,
            random.nextDouble() * 50,
            rx,
            ry,
            random.nextInt(720) - 360,
            random.nextInt(2),
            random.nextInt(2),
            random.nextDouble() * 50,
            random.nextDouble() * 50);
    Outline outline = flat(data, 1);
    // The ends lie at most 71 px apart, so that radii of 25 grow by less than 1.5.
    double radius = 1.5 * Math.max(rx, ry);
    double bound = Flattener.TOLERANCE + BATIK_ERROR + BATIK_ARC_ERROR * radius;
    expectNear(outline, batik(data), bound);
  }

  /** Arc midpoints computed from SVG 2, Implementation Notes, eq. 5.1 to 6.3. */
  @ParameterizedTest
  @CsvSource({
    "M10 20A15 15 0 0 1 40 20, 25, 5",
    "M10 20A20 20 0 0 1 40 20, 25, 13.228757",
    "M10 20A20 20 0 1 1 40 20, 25, -13.228757",
    "M10 20A20 20 0 0 0 40 20, 25, 26.771243",
    "M0 0A30 15 30 0 1 40 10, 17.753553, -1.580629",
    "M0 0A30 15 30 1 0 40 10, 30.5375, 35.868027",
    "M0 0A5 5 0 0 1 30 40, 35, 5"
  })
  void anArcPassesItsMiddle(String data, double x, double y) {
    Outline outline = flat(data, 1);
    assertThat(distance(x, y, segments(outline, false))).isLessThan(Flattener.TOLERANCE + 1e-6);
  }

  /**
   * The cubic (0,0) (10,40) (60,50) (100,0): area with its chord −2385, length 127.809366, computed
   * outside this project. Chords lose at most the tolerance along the length.
   */
  @Test
  void aCubicHasItsAreaLengthAndPoints() {
    Outline outline = flat("M0 0C10 40 60 50 100 0", 1);
    double area = 0;
    double length = 0;
    for (int p = 1; p < outline.points(); p++) {
      area += outline.x(p - 1) * outline.y(p) - outline.x(p) * outline.y(p - 1);
      length += Math.hypot(outline.x(p) - outline.x(p - 1), outline.y(p) - outline.y(p - 1));
    }
    assertThat(area / 2).isCloseTo(-2385, within(Flattener.TOLERANCE * 127.81));
    assertThat(length).isCloseTo(127.809366, within(0.005)).isLessThan(127.80938);
    List<double[]> chords = segments(outline, false);
    double[][] points = {{14.21875, 23.90625}, {38.75, 33.75}, {68.90625, 26.71875}};
    for (double[] point : points) {
      assertThat(distance(point[0], point[1], chords)).isLessThan(Flattener.TOLERANCE);
    }
  }

  @Test
  void scaleComesBeforeTheChords() {
    Outline small = flat("M0 0A10 10 0 0 1 20 0Z", 1);
    Outline large = flat("M0 0A10 10 0 0 1 20 0Z", 100);
    assertThat(large.points()).isGreaterThan(8 * small.points());
    for (int p = 0; p < large.points(); p++) {
      double off = 1000 - Math.hypot(large.x(p) - 1000, large.y(p));
      assertThat(Math.abs(off)).isLessThan(1e-9);
    }
  }

  @Test
  void degenerateArcsAreLinesOrNothing() {
    assertThat(flat("M0 0A0 5 0 0 1 20 0L20 20Z", 1).points()).isEqualTo(3);
    assertThat(flat("M0 0L5 5A3 3 0 0 1 5 5L0 9Z", 1).points()).isEqualTo(4);
    assertThat(flat("M1 1", 1).contours()).isZero();
    assertThat(flat("M1 1L2 2Z", 1).contours()).isZero();
  }

  @Test
  void curvesBeyondTheLimitsAreRefused() {
    String wide = "M0 0" + "C1e6 1e6-1e6 1e6 0 0".repeat(1_000);
    assertThatThrownBy(() -> flat(wide, 1))
        .isInstanceOf(DuskplyException.class)
        .hasMessageContaining("at most 2,000,000 points");
    assertThatThrownBy(() -> flat("M0 0L1e6 0 0 5z", 100))
        .isInstanceOf(DuskplyException.class)
        .hasMessageContaining("16,777,216 pixels");
  }

  private static List<double[]> batik(String data) throws IOException {
    Shape shape = AWTPathProducer.createShape(new StringReader(data), PathIterator.WIND_NON_ZERO);
    List<double[]> segments = new ArrayList<>();
    double[] at = new double[6];
    double x = 0;
    double y = 0;
    double startX = 0;
    double startY = 0;
    for (PathIterator i = shape.getPathIterator(null, 1e-4); !i.isDone(); i.next()) {
      int kind = i.currentSegment(at);
      if (kind == PathIterator.SEG_MOVETO) {
        close(segments, x, y, startX, startY);
        startX = at[0];
        startY = at[1];
        x = startX;
        y = startY;
      } else {
        double toX = kind == PathIterator.SEG_CLOSE ? startX : at[0];
        double toY = kind == PathIterator.SEG_CLOSE ? startY : at[1];
        segments.add(new double[] {x, y, toX, toY});
        x = toX;
        y = toY;
      }
    }
    close(segments, x, y, startX, startY);
    return segments;
  }

  private static void close(List<double[]> segments, double x, double y, double toX, double toY) {
    if (x != toX || y != toY) {
      segments.add(new double[] {x, y, toX, toY});
    }
  }

  private static List<double[]> segments(Outline outline, boolean closed) {
    List<double[]> segments = new ArrayList<>();
    for (int c = 0; c < outline.contours(); c++) {
      int q = closed ? outline.end(c) - 1 : outline.start(c);
      for (int p = outline.start(c); p < outline.end(c); p++) {
        segments.add(new double[] {outline.x(q), outline.y(q), outline.x(p), outline.y(p)});
        q = p;
      }
    }
    return segments;
  }

  private static void expectNear(Outline outline, List<double[]> theirs, double bound) {
    List<double[]> ours = segments(outline, true);
    expectWithin(ours, theirs, bound);
    expectWithin(theirs, ours, bound);
  }

  private static void expectWithin(List<double[]> some, List<double[]> others, double bound) {
    for (double[] s : some) {
      for (double t = 0; t < 1; t += 0.5) {
        double x = s[0] + t * (s[2] - s[0]);
        double y = s[1] + t * (s[3] - s[1]);
        assertThat(distance(x, y, others)).as("at %f, %f", x, y).isLessThan(bound);
      }
    }
  }

  private static double distance(double x, double y, List<double[]> segments) {
    double least = Double.POSITIVE_INFINITY;
    for (double[] s : segments) {
      least = Math.min(least, Line2D.ptSegDist(s[0], s[1], s[2], s[3], x, y));
    }
    return least;
  }
}
