package org.duskply.examples.boathouse;

import static org.duskply.examples.boathouse.Scenery.p;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Facet;
import org.duskply.examples.trace.Leaf;
import org.duskply.examples.trace.Texture;
import org.duskply.examples.trace.Vec;

/**
 * The boathouse: walls with five windows and a glazed door, roof, chimney. Its own axes start at
 * the corner nearest the camera, on the level of the deck: x along the gable (0 … −WIDTH to the
 * left), z along the side (0 … LENGTH).
 */
final class House {
  static final double WIDTH = 6.4;
  static final double LENGTH = 10.5;
  static final double WALL = 2.75;
  static final double RISE = 2.95;
  static final double THICK = 0.2;
  static final double FLOOR = 0.75;
  static final Axes AXES = Axes.turned(new Vec(2.2, FLOOR, 15.2), 42);

  /** Openings: from and to along the wall, sill, head. */
  static final double[][] GABLE_OPENINGS = {
    {-5.75, -4.55, 0.80, 2.15}, {-4.05, -2.35, 0.05, 2.25}, {-1.85, -0.65, 0.80, 2.15}
  };

  static final double[][] SIDE_OPENINGS = {
    {1.2, 3.0, 0.75, 2.15}, {4.3, 6.1, 0.75, 2.15}, {7.4, 9.2, 0.75, 2.15}
  };

  private final Scenery scenery;
  private final Texture boards = new Shiplap(AXES);

  private House(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    House house = new House(scenery);
    house.walls();
    house.openings();
    Roof.build(scenery);
    Room.build(scenery);
  }

  /** True for places on the inner sides of the walls. */
  static boolean indoors(double x, double y, double z) {
    double slack = THICK - 0.02;
    return x > -WIDTH + slack && x < -slack && z > slack && z < LENGTH - slack && y < WALL + 0.1;
  }

  /** True for axes that share the house's ground plan, pitched like its roof or not. */
  static boolean isAligned(Axes on) {
    double along = Math.abs(on.right().dot(AXES.right()));
    return along > 0.999 || along < 0.001;
  }

  private void walls() {
    wall(true, -WIDTH, 0, GABLE_OPENINGS);
    wall(false, THICK, LENGTH - THICK, SIDE_OPENINGS);
    scenery.box(AXES, p(-WIDTH, 0, THICK), p(-WIDTH + THICK, WALL, LENGTH - THICK), boards);
    scenery.box(AXES, p(-WIDTH, 0, LENGTH - THICK), p(0, WALL, LENGTH), boards);
    gableTop(0);
    gableTop(LENGTH);
    corner(0.03, -0.03);
    corner(-WIDTH - 0.03, -0.03);
    corner(0.03, LENGTH + 0.03);
  }

  private void corner(double x, double z) {
    double inX = x > 0 ? -0.13 : 0.13;
    double inZ = z < 1 ? 0.13 : -0.13;
    scenery.box(
        AXES,
        p(Math.min(x, x + inX), 0, Math.min(z, z + inZ)),
        p(Math.max(x, x + inX), WALL, Math.max(z, z + inZ)),
        Textures::trim);
  }

  private void gableTop(double z) {
    Vec out = AXES.direction(0, 0, z > 0 ? 1 : -1);
    Facet.Corner a = new Facet.Corner(AXES.point(-WIDTH, WALL, z), out, 0, 0);
    Facet.Corner b = new Facet.Corner(AXES.point(0, WALL, z), out, 0, 0);
    Facet.Corner c = new Facet.Corner(AXES.point(-WIDTH / 2, WALL + RISE, z), out, 0, 0);
    scenery.add(new Facet(a, b, c, boards, scenery.seed()));
  }

  /** One wall, cut into boxes round its openings. */
  private void wall(boolean gable, double from, double to, double[][] openings) {
    double done = from;
    for (double[] o : openings) {
      piece(gable, done, o[0], 0, WALL);
      piece(gable, o[0], o[1], 0, o[2]);
      piece(gable, o[0], o[1], o[3], WALL);
      done = o[1];
    }
    piece(gable, done, to, 0, WALL);
  }

  private void piece(boolean gable, double from, double to, double low, double high) {
    if (gable) {
      scenery.box(AXES, p(from, low, 0), p(to, high, THICK), boards);
    } else {
      scenery.box(AXES, p(-THICK, low, from), p(0, high, to), boards);
    }
  }

  private void openings() {
    for (int i = 0; i < 3; i++) {
      glaze(true, GABLE_OPENINGS[i], i == 1);
      glaze(false, SIDE_OPENINGS[i], false);
    }
  }

  /** Casing, sill, bars and glass of one opening. Local: along the wall, up, outward. */
  private void glaze(boolean gable, double[] o, boolean door) {
    double casing = 0.10;
    bar(gable, o[0] - casing, o[0], o[2], o[3], -0.10, 0.035);
    bar(gable, o[1], o[1] + casing, o[2], o[3], -0.10, 0.035);
    bar(gable, o[0] - casing - 0.03, o[1] + casing + 0.03, o[3], o[3] + 0.13, -0.10, 0.05);
    if (!door) {
      bar(gable, o[0] - casing - 0.04, o[1] + casing + 0.04, o[2] - 0.06, o[2], -0.10, 0.09);
    }
    double low = door ? o[2] + 0.42 : o[2];
    int columns = door ? 4 : 3;
    int rows = door ? 4 : 3;
    if (door) {
      bar(gable, o[0], o[1], o[2], low, -0.12, -0.07);
    }
    for (int i = 0; i <= columns; i++) {
      double wide = i == 0 || i == columns ? 0.055 : door && i == 2 ? 0.06 : 0.018;
      double at = o[0] + (o[1] - o[0]) * i / columns;
      bar(gable, Math.max(o[0], at - wide), Math.min(o[1], at + wide), low, o[3], -0.125, -0.07);
    }
    for (int i = 0; i <= rows; i++) {
      double wide = i == 0 || i == rows ? 0.055 : 0.018;
      double at = low + (o[3] - low) * i / rows;
      bar(gable, o[0], o[1], Math.max(low, at - wide), Math.min(o[3], at + wide), -0.12, -0.075);
    }
    pane(gable, o[0], o[1], low, o[3]);
  }

  private void bar(
      boolean gable, double from, double to, double low, double high, double in, double out) {
    if (gable) {
      scenery.box(AXES, p(from, low, -out), p(to, high, -in), Textures::trim);
    } else {
      scenery.box(AXES, p(in, low, from), p(out, high, to), Textures::trim);
    }
  }

  private void pane(boolean gable, double from, double to, double low, double high) {
    double middle = (from + to) / 2;
    double level = (low + high) / 2;
    Vec glassAt = gable ? AXES.point(middle, level, 0.1) : AXES.point(-0.1, level, middle);
    Vec half = (gable ? AXES.right() : AXES.ahead()).times((to - from) / 2);
    Vec tall = AXES.up().times((high - low) / 2);
    Vec outward = gable ? AXES.ahead().times(-1) : AXES.right();
    scenery.glass.add(Leaf.sheet(glassAt, half, tall, Textures::plaster, scenery.seed()));
    double area = 0.8 * (to - from) * (high - low);
    scenery.panes.add(new Pane(glassAt.plus(outward.times(0.14)), half, tall, outward, area));
  }
}
