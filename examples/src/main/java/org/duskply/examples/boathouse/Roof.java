package org.duskply.examples.boathouse;

import static org.duskply.examples.boathouse.House.AXES;
import static org.duskply.examples.boathouse.House.LENGTH;
import static org.duskply.examples.boathouse.House.RISE;
import static org.duskply.examples.boathouse.House.WALL;
import static org.duskply.examples.boathouse.House.WIDTH;
import static org.duskply.examples.boathouse.Scenery.p;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Ball;
import org.duskply.examples.trace.Block;

/**
 * The boathouse's roof: two slated slopes with rafters, bargeboards and gutters, ridge, chimney.
 */
final class Roof {
  private final Scenery scenery;

  private Roof(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    new Roof(scenery).slopes();
  }

  private void slopes() {
    double pitch = Math.toDegrees(StrictMath.atan2(RISE, WIDTH / 2));
    double slope = Math.sqrt(RISE * RISE + WIDTH * WIDTH / 4);
    double eaves = 0.65;
    double verge = 0.6;
    double span = slope + eaves;
    for (int side = -1; side <= 1; side += 2) {
      double middleX = -WIDTH / 2 + side * (WIDTH / 4 + eaves / 2 * (WIDTH / 2) / slope);
      double middleY = WALL + RISE / 2 - eaves / 2 * RISE / slope + 0.13;
      Axes along =
          new Axes(
                  AXES.point(middleX, middleY, LENGTH / 2),
                  AXES.ahead().times(side),
                  AXES.up(),
                  AXES.right().times(side))
              .pitched(-pitch);
      scenery.built.add(
          new Block(along, LENGTH + 2 * verge, 0.09, span, new Slates(), scenery.seed()));
      double half = LENGTH / 2 + verge;
      for (int end = -1; end <= 1; end += 2) {
        scenery.box(
            along,
            p(end * half - 0.02, -0.22, -span / 2),
            p(end * half + 0.02, 0.03, span / 2),
            Textures::trim);
      }
      scenery.rod(
          along.point(-half, -0.04, span / 2 + 0.05),
          along.point(half, -0.04, span / 2 + 0.05),
          0.055,
          Textures::lead);
      for (double r = -half + 0.3; r < half; r += 0.62) {
        scenery.box(
            along,
            p(r - 0.035, -0.19, span / 2 - eaves - 0.1),
            p(r + 0.035, -0.045, span / 2 - 0.03),
            Textures::oak);
      }
    }
    double ridge = WALL + RISE + 0.19;
    scenery.rod(
        AXES.point(-WIDTH / 2, ridge, -verge),
        AXES.point(-WIDTH / 2, ridge, LENGTH + verge),
        0.085,
        Textures::lead);
    for (double z : new double[] {-verge, LENGTH + verge}) {
      scenery.add(
          new Ball(AXES.point(-WIDTH / 2, ridge, z), 0.086, Textures::lead, scenery.seed()));
    }
    chimney();
  }

  private void chimney() {
    double x = -WIDTH / 2 - 0.9;
    double z = 6.9;
    for (int course = 0; course < 12; course++) {
      double low = WALL + 1.5 + 0.2 * course;
      double out = course == 10 ? 0.05 : 0;
      for (int i = 0; i < 3; i++) {
        double from = z - 0.42 - out + (0.84 + 2 * out) * i / 3;
        scenery.box(
            AXES,
            p(x - 0.34 - out, low, from),
            p(x + 0.34 + out, low + 0.19, from + (0.84 + 2 * out) / 3 - 0.01),
            Textures::stone);
      }
    }
  }
}
