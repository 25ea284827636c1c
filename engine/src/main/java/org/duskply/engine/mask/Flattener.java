package org.duskply.engine.mask;

import java.util.List;
import org.duskply.recipe.mask.PathSegment;
import org.duskply.recipe.mask.Point;

/**
 * Turns path segments into an {@link Outline}, each curve into chords that leave it by at most
 * {@link #TOLERANCE}.
 *
 * <p>Chords at even steps of the curve's own parameter: a curve whose second derivative is at most
 * M leaves n chords by at most M/(8n²), where M is 2·|P0 − 2P1 + P2| for a quadratic, 6·max(|P0 −
 * 2P1 + P2|, |P1 − 2P2 + P3|) for a cubic (Wang 1984). Chords of an ellipse leave it by at most the
 * larger radius times 1 − cos(half the step). The tolerance is half a code of 8 bits along an edge,
 * a fifth of the 0.01 px that is promised.
 */
public final class Flattener {
  static final double TOLERANCE = 1.0 / 512;

  private final Outline.Builder outline = new Outline.Builder();
  private final double scale;
  private double startX;
  private double startY;
  private double x;
  private double y;
  private boolean open;

  private Flattener(double scale) {
    this.scale = scale;
  }

  /**
   * Follows a path; every subpath is closed by itself.
   *
   * @param segments as {@link org.duskply.recipe.mask.PathData} reads them
   * @param scale what the coordinates are multiplied by, before curves are followed
   * @throws org.duskply.engine.DuskplyException beyond the limits of {@link Outline}
   */
  public static Outline flatten(List<PathSegment> segments, double scale) {
    Flattener flattener = new Flattener(scale);
    for (PathSegment segment : segments) {
      flattener.add(segment);
    }
    return flattener.outline.build();
  }

  private void add(PathSegment segment) {
    if (segment instanceof PathSegment.Move move) {
      close();
      startX = scaled(move.to().x());
      startY = scaled(move.to().y());
      x = startX;
      y = startY;
    } else if (segment instanceof PathSegment.Close) {
      close();
      x = startX;
      y = startY;
    } else {
      begin();
      draw(segment);
    }
  }

  private void draw(PathSegment segment) {
    if (segment instanceof PathSegment.Line line) {
      point(scaled(line.to().x()), scaled(line.to().y()));
    } else if (segment instanceof PathSegment.Quadratic curve) {
      quadratic(scaled(curve.control()), scaled(curve.to()));
    } else if (segment instanceof PathSegment.Cubic curve) {
      cubic(scaled(curve.first()), scaled(curve.second()), scaled(curve.to()));
    } else if (segment instanceof PathSegment.Arc arc) {
      arc(arc);
    }
  }

  private void close() {
    outline.close();
    open = false;
  }

  private void begin() {
    if (!open) {
      open = true;
      outline.add(x, y);
    }
  }

  private void point(double toX, double toY) {
    outline.add(toX, toY);
    x = toX;
    y = toY;
  }

  private void quadratic(Point c, Point to) {
    double fromX = x;
    double fromY = y;
    int chords = chords(2 * bend(fromX, fromY, c.x(), c.y(), to.x(), to.y()));
    for (int i = 1; i < chords; i++) {
      double t = (double) i / chords;
      double s = 1 - t;
      double a = s * s;
      double b = 2 * s * t;
      double d = t * t;
      point(a * fromX + b * c.x() + d * to.x(), a * fromY + b * c.y() + d * to.y());
    }
    point(to.x(), to.y());
  }

  private void cubic(Point c, Point d, Point to) {
    double fromX = x;
    double fromY = y;
    double bend =
        Math.max(
            bend(fromX, fromY, c.x(), c.y(), d.x(), d.y()),
            bend(c.x(), c.y(), d.x(), d.y(), to.x(), to.y()));
    int chords = chords(6 * bend);
    for (int i = 1; i < chords; i++) {
      double t = (double) i / chords;
      double s = 1 - t;
      double k0 = s * s * s;
      double k1 = 3 * s * s * t;
      double k2 = 3 * s * t * t;
      double k3 = t * t * t;
      point(
          k0 * fromX + k1 * c.x() + k2 * d.x() + k3 * to.x(),
          k0 * fromY + k1 * c.y() + k2 * d.y() + k3 * to.y());
    }
    point(to.x(), to.y());
  }

  private void arc(PathSegment.Arc arc) {
    Point to = scaled(arc.to());
    EllipseArc ellipse =
        EllipseArc.of(x, y, scaled(arc.across()), scaled(arc.down()), arc, to.x(), to.y());
    if (ellipse != null) {
      int chords = ellipse.chords(TOLERANCE);
      for (int i = 1; i < chords; i++) {
        double t = (double) i / chords;
        point(ellipse.xAt(t), ellipse.yAt(t));
      }
    }
    point(to.x(), to.y());
  }

  /** The length of P0 − 2P1 + P2. */
  private static double bend(double x0, double y0, double x1, double y1, double x2, double y2) {
    double dx = x0 - 2 * x1 + x2;
    double dy = y0 - 2 * y1 + y2;
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** How many chords a curve takes whose second derivative is at most {@code most}. */
  private static int chords(double most) {
    return Math.max(1, (int) Math.ceil(Math.sqrt(most / (8 * TOLERANCE))));
  }

  private double scaled(double v) {
    return v * scale;
  }

  private Point scaled(Point p) {
    return new Point(p.x() * scale, p.y() * scale);
  }
}
