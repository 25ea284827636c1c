package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Vec;

/**
 * The camera's view: level, with the picture plane upright and the lens shifted instead of tilted,
 * so that verticals stay vertical. Coordinates in the picture are fractions of its width and
 * height.
 */
final class View {
  static final Vec EYE = new Vec(0, 2.05, 0);

  /** Half the picture's width over the distance: a lens of 35 mm on a 24 × 36 mm frame. */
  static final double HALF_WIDTH = 0.514;

  /** Where the horizon lies, from the top. */
  static final double HORIZON = 0.58;

  private View() {}

  /** How far right a place in the picture lies, for a distance of 1. */
  static double right(double x, double width) {
    return (x / width - 0.5) * 2 * HALF_WIDTH;
  }

  /** How far up a place in the picture lies, for a distance of 1. */
  static double up(double y, double width, double height) {
    return (HORIZON - y / height) * 2 * HALF_WIDTH * height / width;
  }

  /** The width of one pixel at a distance of 1. */
  static double pixel(double width) {
    return 2 * HALF_WIDTH / width;
  }

  /** The place in a picture of the given size where a point of the world is seen. */
  static double[] project(Vec p, double width, double height) {
    double z = p.z() - EYE.z();
    double x = ((p.x() - EYE.x()) / z / (2 * HALF_WIDTH) + 0.5) * width;
    double y = (HORIZON - (p.y() - EYE.y()) / z / (2 * HALF_WIDTH) * width / height) * height;
    return new double[] {x, y};
  }
}
