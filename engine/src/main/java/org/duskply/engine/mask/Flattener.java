package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Affine;
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

  private final Outline.Builder outline;
  private final Affine map;
  // Where the path is: in its own coordinates, and on the canvas.
  private double ownX;
  private double ownY;
  private double x;
  private double y;
  private Point start = new Point(0, 0);
  private boolean open;

  private Flattener(Outline.Builder outline, Affine map) {
    this.outline = outline;
    this.map = map;
  }

  /**
   * Follows a path; every subpath is closed by itself.
   *
   * @param segments as {@link org.duskply.recipe.mask.PathData} reads them
   * @param scale what the coordinates are multiplied by, before curves are followed
   * @throws org.duskply.engine.DuskplyException beyond the limits of {@link Outline}
   */
  public static Outline flatten(List<PathSegment> segments, double scale) {
    Outline.Builder outline = new Outline.Builder();
    flatten(segments, Affine.scaling(scale, scale), outline);
    return outline.build();
  }

  /**
   * Follows a path into an outline that is being built.
   *
   * @param map from the path's own coordinates to those of the canvas
   */
  static void flatten(List<PathSegment> segments, Affine map, Outline.Builder outline) {
    Flattener flattener = new Flattener(outline, map);
    for (PathSegment segment : segments) {
      flattener.add(segment);
    }
    flattener.close();
  }

  private void add(PathSegment segment) {
    if (segment instanceof PathSegment.Move move) {
      close();
      start = move.to();
      arrive(start);
    } else if (segment instanceof PathSegment.Close) {
      close();
      arrive(start);
    } else {
      begin();
      draw(segment);
    }
  }

  private void draw(PathSegment segment) {
    if (segment instanceof PathSegment.Line line) {
      point(line.to());
    } else if (segment instanceof PathSegment.Quadratic curve) {
      quadratic(mapped(curve.control()), curve.to());
    } else if (segment instanceof PathSegment.Cubic curve) {
      cubic(mapped(curve.first()), mapped(curve.second()), curve.to());
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

  private void arrive(Point own) {
    ownX = own.x();
    ownY = own.y();
    x = map.x(ownX, ownY);
    y = map.y(ownX, ownY);
  }

  private void point(Point own) {
    arrive(own);
    outline.add(x, y);
  }

  private void quadratic(Point c, Point ownTo) {
    Point to = mapped(ownTo);
    int chords = chords(2 * bend(x, y, c.x(), c.y(), to.x(), to.y()));
    for (int i = 1; i < chords; i++) {
      double t = (double) i / chords;
      double s = 1 - t;
      double a = s * s;
      double b = 2 * s * t;
      double d = t * t;
      outline.add(a * x + b * c.x() + d * to.x(), a * y + b * c.y() + d * to.y());
    }
    point(ownTo);
  }

  private void cubic(Point c, Point d, Point ownTo) {
    Point to = mapped(ownTo);
    double bend =
        Math.max(
            bend(x, y, c.x(), c.y(), d.x(), d.y()),
            bend(c.x(), c.y(), d.x(), d.y(), to.x(), to.y()));
    int chords = chords(6 * bend);
    for (int i = 1; i < chords; i++) {
      double t = (double) i / chords;
      double s = 1 - t;
      double k0 = s * s * s;
      double k1 = 3 * s * s * t;
      double k2 = 3 * s * t * t;
      double k3 = t * t * t;
      outline.add(
          k0 * x + k1 * c.x() + k2 * d.x() + k3 * to.x(),
          k0 * y + k1 * c.y() + k2 * d.y() + k3 * to.y());
    }
    point(ownTo);
  }

  /** Chords of the arc in its own coordinates, so that any map of an ellipse will do. */
  private void arc(PathSegment.Arc arc) {
    Point to = arc.to();
    EllipseArc ellipse = EllipseArc.of(ownX, ownY, arc.across(), arc.down(), arc, to.x(), to.y());
    if (ellipse != null) {
      int chords = ellipse.chords(TOLERANCE / map.stretch());
      for (int i = 1; i < chords; i++) {
        double t = (double) i / chords;
        double ownAtX = ellipse.xAt(t);
        double ownAtY = ellipse.yAt(t);
        outline.add(map.x(ownAtX, ownAtY), map.y(ownAtX, ownAtY));
      }
    }
    point(to);
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

  private Point mapped(Point own) {
    return new Point(map.x(own.x(), own.y()), map.y(own.x(), own.y()));
  }
}
