package org.duskply.examples.boathouse;

import static org.duskply.examples.boathouse.House.AXES;
import static org.duskply.examples.boathouse.Scenery.p;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Ball;
import org.duskply.examples.trace.Leaf;
import org.duskply.examples.trace.Rod;
import org.duskply.examples.trace.Vec;

/** What stands about: deck chairs, café tables, lantern posts, the brazier. */
final class Furniture {
  static final Vec BRAZIER = new Vec(-4.98, 0.74, 13.95);
  static final Axes CHAIR_LEFT =
      new Axes(AXES.point(-5.15, 0, -1.15), AXES.right(), AXES.up(), AXES.ahead());
  static final Axes CHAIR_RIGHT = AXES.at(-4.15, 0, -1.45);

  private final Scenery scenery;

  private Furniture(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    Furniture furniture = new Furniture(scenery);
    furniture.deckChair(turned(CHAIR_LEFT, -38));
    furniture.deckChair(turned(CHAIR_RIGHT, -58));
    furniture.table(AXES.at(0.25, 0, -1.35));
    furniture.brazier();
    Axes pontoon = Axes.along(Waterside.PONTOON_FROM, Waterside.PONTOON_TO);
    double side = -(Waterside.PONTOON_WIDTH / 2 - 0.1);
    furniture.lantern(pontoon.point(-2.6, -0.02, side), 1.55);
    furniture.lantern(pontoon.point(0.7, -0.02, side), 1.55);
    furniture.lantern(pontoon.point(3.6, -0.02, -side), 1.55);
    furniture.lantern(AXES.point(1.45, 0, -2.5), 1.6);
    furniture.lantern(AXES.point(1.45, 0, 5.0), 1.6);
    furniture.lantern(new Vec(-6.55, 0.75, 13.5), 1.6);
  }

  private static Axes turned(Axes on, double degrees) {
    return Axes.turned(on.origin(), 42 + degrees);
  }

  /**
   * Faces −z of its own axes; the sling hangs in a shallow curve from the back rail to the front.
   */
  private void deckChair(Axes on) {
    double w = 0.29;
    for (int side = -1; side <= 1; side += 2) {
      double x = side * w;
      stick(on, x, 0.02, -0.50, x, 1.02, 0.52);
      stick(on, x * 0.88, 0.02, 0.42, x * 0.88, 0.46, -0.48);
      stick(on, x * 0.88, 0.02, 0.62, x * 0.88, 0.72, 0.22);
    }
    stick(on, -w, 1.0, 0.50, w, 1.0, 0.50);
    stick(on, -w, 0.44, -0.46, w, 0.44, -0.46);
    stick(on, -w, 0.06, -0.46, w, 0.06, -0.46);
    Vec before = on.point(0, 1.0, 0.50);
    for (int i = 1; i <= 10; i++) {
      double k = i / 10.0;
      double y = 1.0 - 0.56 * k - 0.80 * k * (1 - k) * (0.35 + 0.65 * k);
      double z = 0.50 - 0.96 * k + 0.12 * k * (1 - k);
      Vec next = on.point(0, y, z);
      Vec half = next.minus(before).times(0.5);
      scenery.add(
          Leaf.sheet(
              before.plus(half),
              half,
              on.right().times(w - 0.03),
              Textures::canvas,
              scenery.seed()));
      before = next;
    }
  }

  private void stick(Axes on, double x, double y, double z, double x2, double y2, double z2) {
    scenery.beam(on.point(x, y, z), on.point(x2, y2, z2), 0.05, 0.03, Textures::oak);
  }

  private void table(Axes on) {
    Vec foot = on.point(0, 0.01, 0);
    scenery.rod(foot, on.point(0, 0.7, 0), 0.025, Textures::iron);
    scenery.rod(on.point(0, 0.70, 0), on.point(0, 0.73, 0), 0.34, Textures::oak);
    scenery.add(new Ball(on.point(0, 0.72, 0), new Vec(0.34, 0.012, 0.34), Textures::oak, 91));
    scenery.add(new Ball(foot, new Vec(0.22, 0.02, 0.22), Textures::iron, 92));
    for (int side = -1; side <= 1; side += 2) {
      Axes seat = on.at(0.62 * side, 0, 0.1 * side);
      scenery.box(seat, p(-0.19, 0.43, -0.19), p(0.19, 0.46, 0.19), Textures::oak);
      for (int i = 0; i < 4; i++) {
        double x = (i & 1) == 0 ? -0.17 : 0.17;
        double z = (i & 2) == 0 ? -0.17 : 0.17;
        double top = x * side > 0 ? 0.88 : 0.43;
        scenery.beam(seat.point(x, 0, z), seat.point(x, top, z), 0.03, 0.03, Textures::iron);
      }
      scenery.beam(
          seat.point(0.17 * side, 0.80, -0.19),
          seat.point(0.17 * side, 0.80, 0.19),
          0.14,
          0.02,
          Textures::oak);
    }
  }

  private void brazier() {
    Vec b = BRAZIER;
    scenery.add(
        new Rod(b.plus(y(0.36)), b.plus(y(0.62)), 0.17, 0.34, Textures::iron, scenery.seed()));
    scenery.add(new Ball(b.plus(y(0.37)), new Vec(0.17, 0.03, 0.17), Textures::iron, 93));
    for (int leg = 0; leg < 3; leg++) {
      double c = leg == 0 ? 1 : -0.5;
      double s = leg == 0 ? 0 : leg == 1 ? 0.87 : -0.87;
      scenery.rod(
          b.plus(new Vec(0.16 * c, 0.42, 0.16 * s)),
          b.plus(new Vec(0.30 * c, 0, 0.30 * s)),
          0.016,
          Textures::iron);
    }
    scenery.add(new Ball(b.plus(y(0.53)), new Vec(0.30, 0.11, 0.30), Textures::ember, 94));
    double[][] logs = {{-0.2, 0.58, -0.1, 0.16, 0.75, 0.12}, {0.2, 0.58, -0.12, -0.12, 0.78, 0.1}};
    for (double[] log : logs) {
      scenery.rod(
          b.plus(new Vec(log[0], log[1], log[2])),
          b.plus(new Vec(log[3], log[4], log[5])),
          0.038,
          Textures::ember);
    }
  }

  private static Vec y(double up) {
    return new Vec(0, up, 0);
  }

  /** An iron post with a lantern of four frosted panes under a cap. */
  private void lantern(Vec foot, double height) {
    scenery.add(new Rod(foot, foot.plus(y(0.12)), 0.06, 0.035, Textures::iron, scenery.seed()));
    scenery.rod(foot, foot.plus(y(height)), 0.024, Textures::iron);
    Axes head = Axes.turned(foot.plus(y(height + 0.17)), 20);
    scenery.lanterns.add(head.origin());
    scenery.box(head, p(-0.055, -0.13, -0.055), p(0.055, 0.12, 0.055), Textures::lanternGlass);
    scenery.box(head, p(-0.075, -0.16, -0.075), p(0.075, -0.13, 0.075), Textures::iron);
    scenery.box(head, p(-0.085, 0.12, -0.085), p(0.085, 0.145, 0.085), Textures::iron);
    scenery.add(
        new Rod(head.point(0, 0.145, 0), head.point(0, 0.22, 0), 0.075, 0.01, Textures::iron, 95));
    for (int i = 0; i < 4; i++) {
      double x = (i & 1) == 0 ? -0.062 : 0.062;
      double z = (i & 2) == 0 ? -0.062 : 0.062;
      scenery.beam(head.point(x, -0.14, z), head.point(x, 0.13, z), 0.014, 0.014, Textures::iron);
    }
  }
}
