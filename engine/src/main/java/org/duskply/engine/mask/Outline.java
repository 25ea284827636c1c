package org.duskply.engine.mask;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Point;

/**
 * Closed contours of straight edges, in pixels of the canvas. Each contour runs from its last point
 * back to its first; contours may cross themselves and each other. Contours belong to one shape or
 * to several, each with a fill rule of its own; what lies in any of them is inside. Immutable.
 */
public final class Outline {
  /** The most points that an outline may have, its curves followed. */
  public static final int MAX_POINTS = 2_000_000;

  /** The farthest from 0 that a coordinate may lie, in pixels. */
  public static final double FARTHEST = 1 << 24;

  private final double[] x;
  private final double[] y;
  private final int[] ends;
  private final int[] shapes;
  private final List<FillRule> rules;

  private Outline(double[] x, double[] y, int[] ends, int[] shapes, List<FillRule> rules) {
    this.x = x;
    this.y = y;
    this.ends = ends;
    this.shapes = shapes;
    this.rules = List.copyOf(rules);
  }

  /**
   * The outline of a polygon.
   *
   * @param corners in order; fewer than three enclose nothing
   * @param scale what the coordinates are multiplied by
   * @throws DuskplyException beyond {@link #MAX_POINTS} or {@link #FARTHEST}
   */
  public static Outline ofPolygon(List<Point> corners, double scale) {
    Builder builder = new Builder();
    for (Point corner : corners) {
      builder.add(corner.x() * scale, corner.y() * scale);
    }
    return builder.build();
  }

  /** How many contours. */
  public int contours() {
    return ends.length;
  }

  /** How many points, all contours together. */
  public int points() {
    return x.length;
  }

  /** The first point of contour {@code c}. */
  int start(int c) {
    return c == 0 ? 0 : ends[c - 1];
  }

  /** One past the last point of contour {@code c}. */
  int end(int c) {
    return ends[c];
  }

  /** Which shape contour {@code c} belongs to. */
  int shape(int c) {
    return shapes[c];
  }

  /** The fill rule of each shape. */
  List<FillRule> rules() {
    return rules;
  }

  double x(int point) {
    return x[point];
  }

  double y(int point) {
    return y[point];
  }

  /** The least region that holds every pixel of which the outline can cover a part. */
  public Region bounds() {
    if (x.length == 0) {
      return Region.EMPTY;
    }
    double left = x[0];
    double top = y[0];
    double right = x[0];
    double bottom = y[0];
    for (int i = 1; i < x.length; i++) {
      left = Math.min(left, x[i]);
      top = Math.min(top, y[i]);
      right = Math.max(right, x[i]);
      bottom = Math.max(bottom, y[i]);
    }
    return new Region(
        (int) Math.floor(left),
        (int) Math.floor(top),
        (int) Math.ceil(right),
        (int) Math.ceil(bottom));
  }

  /** Writes all that sets this outline apart from others. */
  void describe(KeyWriter key) {
    key.word("outline").number(rules.size());
    rules.forEach(rule -> key.word(rule.key()));
    for (int c = 0; c < ends.length; c++) {
      key.number(shapes[c]).number(ends[c]);
    }
    for (int i = 0; i < x.length; i++) {
      key.number(x[i]).number(y[i]);
    }
  }

  /**
   * Gathers points into contours, and contours into shapes; a contour of fewer than three points is
   * dropped.
   */
  static final class Builder {
    private double[] x = new double[16];
    private double[] y = new double[16];
    private int[] ends = new int[4];
    private int[] shapes = new int[4];
    private final List<FillRule> rules = new ArrayList<>();
    private int points;
    private int contours;

    /** Begins a shape; contours that are added before belong to the first, filled nonzero. */
    void shape(FillRule rule) {
      close();
      rules.add(rule);
    }

    void add(double px, double py) {
      // Written so that a number that is not one is refused too.
      if (!(Math.abs(px) <= FARTHEST && Math.abs(py) <= FARTHEST)) {
        throw new DuskplyException(
            "An outline may not reach farther than 16,777,216 pixels from the picture's corner.");
      }
      if (points == MAX_POINTS) {
        throw new DuskplyException(
            "An outline may have at most 2,000,000 points once its curves are followed.");
      }
      if (points == x.length) {
        x = Arrays.copyOf(x, 2 * points);
        y = Arrays.copyOf(y, 2 * points);
      }
      x[points] = px;
      y[points++] = py;
    }

    /** Ends the contour that has been added to. */
    void close() {
      int start = contours == 0 ? 0 : ends[contours - 1];
      if (points - start < 3) {
        points = start;
        return;
      }
      if (contours == ends.length) {
        ends = Arrays.copyOf(ends, 2 * contours);
        shapes = Arrays.copyOf(shapes, 2 * contours);
      }
      if (rules.isEmpty()) {
        rules.add(FillRule.NONZERO);
      }
      shapes[contours] = rules.size() - 1;
      ends[contours++] = points;
    }

    Outline build() {
      close();
      return new Outline(
          Arrays.copyOf(x, points),
          Arrays.copyOf(y, points),
          Arrays.copyOf(ends, contours),
          Arrays.copyOf(shapes, contours),
          rules);
    }
  }
}
