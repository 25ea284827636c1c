package org.duskply.engine.mask;

import org.duskply.recipe.mask.PathSegment;
import org.jspecify.annotations.Nullable;

/**
 * An arc of an ellipse by its centre: x = cx + rx·cos θ·cos φ − ry·sin θ·sin φ, y = cy + rx·cos θ·
 * sin φ + ry·sin θ·cos φ, with θ from {@code start} by {@code sweep} radians.
 *
 * <p>Source: SVG 2, Implementation Notes, "Conversion from endpoint to center parameterization" and
 * "Correction of out-of-range radii".
 */
final class EllipseArc {
  private final double centreX;
  private final double centreY;
  private final double across;
  private final double down;
  private final double cosTurn;
  private final double sinTurn;
  private final double start;
  private final double sweep;

  private EllipseArc(
      double centreX,
      double centreY,
      double across,
      double down,
      double cosTurn,
      double sinTurn,
      double start,
      double sweep) {
    this.centreX = centreX;
    this.centreY = centreY;
    this.across = across;
    this.down = down;
    this.cosTurn = cosTurn;
    this.sinTurn = sinTurn;
    this.start = start;
    this.sweep = sweep;
  }

  /**
   * The arc between two points.
   *
   * @param flags its turn and flags; position and radii are the other arguments
   * @return absent where the arc is a straight line or nothing
   */
  static @Nullable EllipseArc of(
      double fromX,
      double fromY,
      double rx,
      double ry,
      PathSegment.Arc flags,
      double toX,
      double toY) {
    if (rx == 0 || ry == 0 || (fromX == toX && fromY == toY)) {
      return null;
    }
    double turn = StrictMath.toRadians(flags.turn() % 360);
    double cos = StrictMath.cos(turn);
    double sin = StrictMath.sin(turn);
    double halfX = (fromX - toX) / 2;
    double halfY = (fromY - toY) / 2;
    // On the unit circle of the ellipse the two points are (u, v) and (−u, −v) about the middle.
    double u = (cos * halfX + sin * halfY) / rx;
    double v = (cos * halfY - sin * halfX) / ry;
    double square = u * u + v * v;
    double grow = square > 1 ? Math.sqrt(square) : 1;
    double distance = square > 1 ? 0 : Math.sqrt((1 - square) / square);
    if (flags.large() == flags.clockwise()) {
      distance = -distance;
    }
    double unitX = distance * v;
    double unitY = -distance * u;
    double offX = unitX * rx;
    double offY = unitY * ry;
    double start = StrictMath.atan2(v / grow - unitY, u / grow - unitX);
    double end = StrictMath.atan2(-v / grow - unitY, -u / grow - unitX);
    return new EllipseArc(
        cos * offX - sin * offY + (fromX + toX) / 2,
        sin * offX + cos * offY + (fromY + toY) / 2,
        rx * grow,
        ry * grow,
        cos,
        sin,
        start,
        sweep(end - start, flags.clockwise()));
  }

  private static double sweep(double angle, boolean clockwise) {
    if (clockwise) {
      return angle < 0 ? angle + 2 * Math.PI : angle;
    }
    return angle > 0 ? angle - 2 * Math.PI : angle;
  }

  /** How many chords follow the arc within {@code tolerance}. */
  int chords(double tolerance) {
    double radius = Math.max(across, down);
    double widest = radius <= tolerance ? Math.PI : 2 * StrictMath.acos(1 - tolerance / radius);
    return Math.max(1, (int) Math.ceil(Math.abs(sweep) / Math.min(widest, Math.PI / 2)));
  }

  /** Across, at {@code t} of the way. */
  double xAt(double t) {
    double angle = start + t * sweep;
    return centreX
        + across * StrictMath.cos(angle) * cosTurn
        - down * StrictMath.sin(angle) * sinTurn;
  }

  /** Down, at {@code t} of the way. */
  double yAt(double t) {
    double angle = start + t * sweep;
    return centreY
        + across * StrictMath.cos(angle) * sinTurn
        + down * StrictMath.sin(angle) * cosTurn;
  }
}
