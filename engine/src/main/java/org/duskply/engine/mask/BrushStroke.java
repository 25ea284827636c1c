package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Stroke;

/**
 * A stroke of a round brush on the canvas: straight pieces from point to point. Its value where its
 * nearest piece is {@code d} pixels from a pixel's centre:
 *
 * <pre>v = strength · (1 − smooth(r(1 − soft) − ½, r + ½, d))</pre>
 *
 * <p>That is the greatest of all discs along the way. Immutable.
 */
final class BrushStroke {
  private final double[] x;
  private final double[] y;
  private final double inner;
  private final double outer;
  private final double strength;
  private final Region bounds;

  private BrushStroke(double[] x, double[] y, double inner, double outer, double strength) {
    this.x = x;
    this.y = y;
    this.inner = inner;
    this.outer = outer;
    this.strength = strength;
    Region all = Region.EMPTY;
    for (int piece = 0; piece < pieces(); piece++) {
      all = all.hull(box(piece));
    }
    this.bounds = all;
  }

  /**
   * A stroke on the canvas.
   *
   * @param scale pixels of the canvas for one of the grid
   */
  static BrushStroke of(Stroke stroke, double scale) {
    List<Point> points = stroke.points();
    double[] x = points.stream().mapToDouble(p -> p.x() * scale).toArray();
    double[] y = points.stream().mapToDouble(p -> p.y() * scale).toArray();
    double radius = stroke.radius() * scale;
    double inner = radius * (1 - stroke.soft()) - 0.5;
    return new BrushStroke(x, y, inner, radius + 0.5, stroke.strength());
  }

  /** How many straight pieces; a dab is one without length. */
  int pieces() {
    return Math.max(1, x.length - 1);
  }

  /** A region outside which the stroke is 0. */
  Region bounds() {
    return bounds;
  }

  /** A region outside which a piece is 0. */
  Region box(int piece) {
    int end = end(piece);
    return new Region(
        below(Math.min(x[piece], x[end]) - outer),
        below(Math.min(y[piece], y[end]) - outer),
        above(Math.max(x[piece], x[end]) + outer),
        above(Math.max(y[piece], y[end]) + outer));
  }

  /** As {@link #box}, for rows {@code top} up to {@code bottom} alone, its columns fewer. */
  Region box(int piece, int top, int bottom) {
    Region rows = box(piece).rows(top, bottom);
    int end = end(piece);
    double down = y[end] - y[piece];
    if (rows.empty() || down == 0) {
      return rows;
    }
    double across = x[end] - x[piece];
    double a = x[piece] + across * share((rows.top() - outer - y[piece]) / down);
    double b = x[piece] + across * share((rows.bottom() + outer - y[piece]) / down);
    // One pixel more, for what rounding does to a piece that is all but level.
    int left = below(Math.min(a, b) - outer - 1);
    int right = above(Math.max(a, b) + outer + 1);
    return new Region(left, rows.top(), right, rows.bottom()).meet(rows);
  }

  private static int below(double place) {
    return (int) Math.max(-Region.FAR, Math.floor(place));
  }

  private static int above(double place) {
    return (int) Math.min(Region.FAR, Math.ceil(place));
  }

  private int end(int piece) {
    return Math.min(piece + 1, x.length - 1);
  }

  private static double share(double share) {
    return Math.max(0, Math.min(1, share));
  }

  /**
   * Lowers squares of distances to those from a piece, for centres of pixels {@code from} up to
   * {@code to} of row {@code row}; column {@code left} stands at index 0.
   */
  void nearer(int piece, int row, int left, int from, int to, double[] squares) {
    int end = end(piece);
    double across = x[end] - x[piece];
    double down = y[end] - y[piece];
    double length = across * across + down * down;
    double inverse = length > 0 ? 1 / length : 0;
    double startX = x[piece];
    double dy = row + 0.5 - y[piece];
    for (int column = from; column < to; column++) {
      double dx = column + 0.5 - startX;
      double along = Math.max(0, Math.min(1, (dx * across + dy * down) * inverse));
      double offX = dx - along * across;
      double offY = dy - along * down;
      double square = offX * offX + offY * offY;
      squares[column - left] = Math.min(squares[column - left], square);
    }
  }

  /** Multiplies {@code rest} by what the stroke leaves at each distance. */
  void paint(double[] squares, int from, int to, double[] rest) {
    for (int i = from; i < to; i++) {
      if (squares[i] < outer * outer) {
        rest[i] *= 1 - value(Math.sqrt(squares[i]));
      }
    }
  }

  private double value(double distance) {
    if (distance <= inner) {
      return strength;
    }
    double u = Math.min(1, (distance - inner) / (outer - inner));
    return strength * (1 - u * u * (3 - 2 * u));
  }
}
