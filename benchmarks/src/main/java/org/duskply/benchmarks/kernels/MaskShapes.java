package org.duskply.benchmarks.kernels;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.testing.reference.Smooth;
import org.duskply.recipe.mask.Ease;
import org.duskply.recipe.mask.Oval;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Radii;
import org.duskply.recipe.mask.Ramp;
import org.duskply.recipe.mask.Stroke;

/** What is drawn on a {@link Square}, and its values or area by formula. */
final class MaskShapes {
  private static final Point MIDDLE = new Point(Square.SIDE / 2.0, Square.SIDE / 2.0);
  private static final Point FROM = new Point(200, 100);
  private static final Point TO = new Point(600, 900);

  static final Ramp LINEAR = new Ramp(FROM, TO, Ease.LINEAR);
  static final Ramp SMOOTH = new Ramp(FROM, TO, Ease.SMOOTH);

  /** Two soft strokes that cross, one of them with a bend, and a dab. */
  static final List<Stroke> STROKES =
      List.of(
          new Stroke(
              List.of(new Point(100, 200), new Point(700, 300), new Point(900, 800)), 80, 0.7, 1),
          new Stroke(List.of(new Point(150, 850), new Point(800, 150)), 120, 0.5, 0.8),
          new Stroke(List.of(new Point(300, 600)), 150, 1, 0.6));

  private MaskShapes() {}

  /** A star about the middle, its corners by turns at one distance and the other. */
  static List<Point> star(int corners, double outer, double inner) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      double angle = 2 * StrictMath.PI * i / corners;
      double radius = i % 2 == 0 ? outer : inner;
      points.add(
          new Point(
              MIDDLE.x() + radius * StrictMath.cos(angle),
              MIDDLE.y() + radius * StrictMath.sin(angle)));
    }
    return points;
  }

  /** The area of a polygon by the shoelace formula. */
  static double area(List<Point> points) {
    double twice = 0;
    Point before = points.get(points.size() - 1);
    for (Point point : points) {
      twice += before.x() * point.y() - point.x() * before.y();
      before = point;
    }
    return Math.abs(twice) / 2;
  }

  /** All but a circle about the middle: four cubics with handles of 4/3·(√2 − 1) of the radius. */
  static String roundPath(double radius) {
    double handle = 4.0 / 3 * (Math.sqrt(2) - 1) * radius;
    return "M 512 %1$s C %2$s %1$s %3$s %4$s %3$s 512 C %3$s %2$s %2$s %3$s 512 %3$s"
        .concat(" C %4$s %3$s %1$s %2$s %1$s 512 C %1$s %4$s %4$s %1$s 512 %1$s Z")
        .formatted(512 - radius, 512 + handle, 512 + radius, 512 - handle);
  }

  /** About the middle, turned by 30 degrees. */
  static Oval oval(double across, double down) {
    return new Oval(MIDDLE, new Radii(across, down), 30);
  }

  /** How far along the gradient a pixel's centre lies. */
  static double along(int x, int y) {
    double dx = TO.x() - FROM.x();
    double dy = TO.y() - FROM.y();
    double t = ((x + 0.5 - FROM.x()) * dx + (y + 0.5 - FROM.y()) * dy) / (dx * dx + dy * dy);
    return Math.max(0, Math.min(1, t));
  }

  /** The same without a kink at either end. */
  static double smoothly(int x, int y) {
    return Smooth.of(0, 1, along(x, y));
  }

  /** What the strokes add up to at a pixel's centre. */
  static double stroked(int x, int y) {
    double rest = 1;
    for (Stroke stroke : STROKES) {
      double nearest = Double.POSITIVE_INFINITY;
      List<Point> points = stroke.points();
      for (int i = 0; i < points.size(); i++) {
        Point end = points.get(Math.min(i + 1, points.size() - 1));
        nearest = Math.min(nearest, distance(points.get(i), end, x + 0.5, y + 0.5));
      }
      double hard = stroke.radius() * (1 - stroke.soft()) - 0.5;
      rest *= 1 - stroke.strength() * (1 - Smooth.of(hard, stroke.radius() + 0.5, nearest));
    }
    return 1 - rest;
  }

  private static double distance(Point a, Point b, double x, double y) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double square = dx * dx + dy * dy;
    double t = square == 0 ? 0 : ((x - a.x()) * dx + (y - a.y()) * dy) / square;
    double held = Math.max(0, Math.min(1, t));
    return StrictMath.hypot(x - a.x() - held * dx, y - a.y() - held * dy);
  }
}
