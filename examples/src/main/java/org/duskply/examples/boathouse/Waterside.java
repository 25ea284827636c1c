package org.duskply.examples.boathouse;

import static org.duskply.examples.boathouse.House.AXES;
import static org.duskply.examples.boathouse.House.FLOOR;
import static org.duskply.examples.boathouse.House.LENGTH;
import static org.duskply.examples.boathouse.House.WIDTH;
import static org.duskply.examples.boathouse.Scenery.p;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Ball;
import org.duskply.examples.trace.Block;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Vec;

/** What is built at the water: the deck round the house, the pontoon, the quay and its steps. */
final class Waterside {
  static final double DECK_FRONT = -2.7;
  static final double DECK_SIDE = 1.6;
  static final double DECK_LEFT = -WIDTH - 0.5;
  static final Vec PONTOON_FROM = new Vec(-2.75, 0.40, 3.9);
  static final Vec PONTOON_TO = new Vec(-1.55, 0.40, 14.9);
  static final double PONTOON_WIDTH = 1.55;
  static final double QUAY_FRONT = 13.2;
  static final double QUAY_RIGHT = -4.25;
  static final double[] STEPS_X = {-6.25, -4.6};
  static final int STEPS = 5;
  private static final double PLANK = 0.145;

  private final Scenery scenery;

  private Waterside(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    Waterside waterside = new Waterside(scenery);
    waterside.deck();
    waterside.pontoon();
    waterside.quay();
    waterside.steps();
  }

  private void deck() {
    for (double z = DECK_FRONT; z < -0.05; z += PLANK + 0.008) {
      planks(z, DECK_LEFT, DECK_SIDE, true);
    }
    for (double x = 0.02; x < DECK_SIDE - PLANK; x += PLANK + 0.008) {
      planks(x, 0, LENGTH + 0.6, false);
    }
    Axes low = AXES.at(0, 0, 0);
    scenery.box(
        low,
        p(DECK_LEFT, -0.30, DECK_FRONT - 0.03),
        p(DECK_SIDE + 0.03, -0.045, DECK_FRONT + 0.02),
        Textures::tarred);
    scenery.box(
        low,
        p(DECK_SIDE - 0.02, -0.30, DECK_FRONT),
        p(DECK_SIDE + 0.03, -0.045, LENGTH + 0.6),
        Textures::tarred);
    scenery.box(low, p(-WIDTH, -1.0, -0.4), p(-0.4, -0.06, LENGTH), Textures::stone);
    for (double x = DECK_LEFT + 0.2; x <= DECK_SIDE; x += 2.05) {
      pile(x, DECK_FRONT + 0.22, -0.05);
    }
    for (double z = DECK_FRONT + 2.2; z < LENGTH + 0.6; z += 2.1) {
      pile(DECK_SIDE - 0.2, z, 0.0 - 0.05);
    }
  }

  /** One row of decking, cut into lengths. */
  private void planks(double across, double from, double to, boolean front) {
    int row = (int) Math.round(across * 100);
    double start = from - 1.8 * Noise.unit(row, 1, 51);
    for (double s = start; s < to; s += 3.6) {
      double a = Math.max(from, s + 0.003);
      double b = Math.min(to, s + 3.6);
      double lift = 0.006 * Noise.unit(row, (int) (s * 10), 52) - 0.006;
      if (b - a > 0.05) {
        if (front) {
          scenery.box(AXES, p(a, -0.045, across), p(b, lift, across + PLANK), Textures::deck);
        } else {
          board(AXES.point(across + PLANK / 2, 0, a), AXES.point(across + PLANK / 2, 0, b), lift);
        }
      }
    }
  }

  private void board(Vec from, Vec to, double lift) {
    Vec down = new Vec(0, -0.0225 + lift / 2, 0);
    Axes on = Axes.along(from.plus(down), to.plus(down));
    double length = to.minus(from).length();
    scenery.built.add(new Block(on, length, 0.045 + lift, PLANK, Textures::deck, scenery.seed()));
  }

  private void pile(double x, double z, double top) {
    scenery.rod(AXES.point(x, -1.2, z), AXES.point(x, top, z), 0.11, Textures::tarred);
  }

  private void pontoon() {
    Axes on = Axes.along(PONTOON_FROM, PONTOON_TO);
    double length = PONTOON_TO.minus(PONTOON_FROM).length();
    double half = PONTOON_WIDTH / 2;
    for (double x = -length / 2; x < length / 2; x += PLANK + 0.012) {
      int row = (int) Math.round(x * 1000);
      double lift = 0.008 * Noise.unit(row, 1, 53);
      double out = 0.03 * (Noise.unit(row, 2, 53) - 0.5);
      Vec a = on.point(x + PLANK / 2, -0.02 + lift, -half + out);
      Vec b = on.point(x + PLANK / 2, -0.02 + lift, half + out);
      scenery.beam(a, b, 0.04, PLANK, Textures::deck);
    }
    for (int side = -1; side <= 1; side += 2) {
      double z = side * (half - 0.06);
      scenery.box(
          on, p(-length / 2, -0.24, z - 0.045), p(length / 2, -0.045, z + 0.045), Textures::tarred);
      for (double x = -length / 2 + 0.9; x < length / 2 - 1; x += 2.3) {
        Vec foot = on.point(x, -1.1, side * (half + 0.09));
        scenery.rod(foot, foot.plus(new Vec(0, 1.55, 0)), 0.085, Textures::tarred);
        Vec top = foot.plus(new Vec(0, 1.555, 0));
        scenery.add(new Ball(top, new Vec(0.092, 0.028, 0.092), Textures::lead, scenery.seed()));
      }
    }
    doorstep();
  }

  /** Two timber treads from the pontoon up to the deck. */
  private void doorstep() {
    double x = -4.2;
    scenery.box(
        AXES,
        p(x - 0.7, -0.20, DECK_FRONT - 0.36),
        p(x + 0.9, -0.16, DECK_FRONT - 0.04),
        Textures::deck);
  }

  /** Quay walls laid of single stones in courses, the paving on top. */
  private void quay() {
    double left = -11;
    for (int course = 0; course < 5; course++) {
      double low = -0.35 + 0.21 * course;
      course(left, QUAY_RIGHT, low, course, true);
      course(QUAY_FRONT, 19.0, low, course, false);
    }
    Axes world = Axes.turned(new Vec(0, 0, 0), 0);
    for (double x = left; x < QUAY_RIGHT; x += 0.92) {
      for (double z = QUAY_FRONT + 0.02; z < 18; z += 0.8) {
        double lift = 0.012 * Noise.unit((int) (x * 50), (int) (z * 50), 54);
        double right = Math.min(x + 0.905, QUAY_RIGHT + 0.04);
        scenery.box(
            world,
            p(x, 0.6, z - (z < QUAY_FRONT + 0.1 ? 0.07 : 0)),
            p(right, 0.735 + lift, z + 0.785),
            Textures::stone);
      }
    }
  }

  private void course(double from, double to, double low, int number, boolean front) {
    double s = from;
    for (int i = 0; s < to; i++) {
      double wide = 0.28 + 0.34 * Noise.unit(i, number, front ? 55 : 56);
      double end = Math.min(to, s + wide);
      double out = 0.035 * Noise.unit(i, number, 57);
      double high = low + 0.197;
      Axes world = Axes.turned(new Vec(0, 0, 0), 0);
      if (front) {
        scenery.box(
            world,
            p(s, low, QUAY_FRONT - out),
            p(end - 0.012, high, QUAY_FRONT + 0.3),
            Textures::stone);
      } else {
        scenery.box(
            world,
            p(QUAY_RIGHT - 0.3, low, s),
            p(QUAY_RIGHT + out, high, end - 0.012),
            Textures::stone);
      }
      s = end;
    }
    Axes world = Axes.turned(new Vec(0, 0, 0), 0);
    if (front) {
      scenery.box(
          world,
          p(from, low, QUAY_FRONT + 0.03),
          p(to, low + 0.21, QUAY_FRONT + 0.3),
          Textures::stone);
    } else {
      scenery.box(
          world,
          p(QUAY_RIGHT - 0.3, low, from),
          p(QUAY_RIGHT - 0.03, low + 0.21, to),
          Textures::stone);
    }
  }

  /** Five stone steps from the quay down to the water, each of three slabs. */
  private void steps() {
    Axes world = Axes.turned(new Vec(0, 0, 0), 0);
    double third = (STEPS_X[1] - STEPS_X[0]) / 3;
    for (int step = 0; step < STEPS; step++) {
      double top = 0.73 - 0.155 * (step + 1);
      double back = QUAY_FRONT - 0.37 * step;
      for (int slab = 0; slab < 3; slab++) {
        double x = STEPS_X[0] + third * slab;
        double worn = 0.012 * Noise.unit(step, slab, 58);
        scenery.box(
            world,
            p(x, top - 0.5, back - 0.39 - worn),
            p(x + third - 0.008, top - worn, back),
            Textures::stone);
      }
    }
    for (int side = 0; side < 2; side++) {
      double x = side == 0 ? STEPS_X[0] - 0.3 : STEPS_X[1] + 0.02;
      scenery.box(
          world,
          p(x, -0.3, QUAY_FRONT - 0.75),
          p(x + 0.28, 0.77, QUAY_FRONT + 0.05),
          Textures::stone);
      scenery.box(
          world,
          p(x, -0.3, QUAY_FRONT - 1.7),
          p(x + 0.28, 0.36, QUAY_FRONT - 0.76),
          Textures::stone);
    }
    scenery.box(
        world,
        p(STEPS_X[0], -0.4, QUAY_FRONT - 2.4),
        p(STEPS_X[1], FLOOR - 0.75 - 0.03, QUAY_FRONT),
        Textures::stone);
  }
}
