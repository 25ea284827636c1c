package org.duskply.examples.boathouse;

import static org.duskply.examples.boathouse.House.AXES;
import static org.duskply.examples.boathouse.House.LENGTH;
import static org.duskply.examples.boathouse.House.THICK;
import static org.duskply.examples.boathouse.House.WALL;
import static org.duskply.examples.boathouse.House.WIDTH;
import static org.duskply.examples.boathouse.Scenery.p;

import org.duskply.examples.trace.Ball;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Vec;

/** The café behind the panes: floor, ceiling, bar, shelves, tables, pendant lamps. */
final class Room {
  private final Scenery scenery;

  private Room(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    Room room = new Room(scenery);
    room.shell();
    room.shelves();
    room.tables();
    room.lamps();
  }

  private void shell() {
    scenery.box(
        AXES, p(-WIDTH + 0.01, -0.06, 0.01), p(-0.01, 0.01, LENGTH - 0.01), Textures::roomFloor);
    scenery.box(
        AXES,
        p(-WIDTH + THICK, WALL - 0.03, THICK),
        p(-THICK, WALL + 0.02, LENGTH - THICK),
        Textures::plaster);
    for (double z = 1.2; z < LENGTH; z += 1.6) {
      scenery.box(
          AXES,
          p(-WIDTH + THICK, WALL - 0.2, z - 0.06),
          p(-THICK, WALL - 0.03, z + 0.06),
          Textures::roomOak);
    }
  }

  /** The bar with its shelves along the left wall and at the back. */
  private void shelves() {
    scenery.box(AXES, p(-5.4, 0, 3.2), p(-4.85, 1.08, 8.6), Textures::roomOak);
    scenery.box(AXES, p(-5.5, 1.08, 3.1), p(-4.75, 1.13, 8.7), Textures::roomFloor);
    for (int shelf = 0; shelf < 3; shelf++) {
      double y = 1.25 + 0.42 * shelf;
      scenery.box(AXES, p(-6.2, y - 0.03, 2.0), p(-5.93, y, 9.6), Textures::roomOak);
      ware(y, 2.05, 9.55, shelf);
    }
    for (int i = 0; i < 4; i++) {
      double x = -5.1 + 1.2 * i;
      scenery.box(
          AXES, p(x, 1.38, LENGTH - 0.25), p(x + 0.66, 1.90, LENGTH - 0.21), Textures::roomOak);
      scenery.box(
          AXES,
          p(x + 0.03, 1.41, LENGTH - 0.26),
          p(x + 0.63, 1.87, LENGTH - 0.22),
          Textures::print);
    }
  }

  private void ware(double y, double from, double to, int row) {
    double z = from;
    for (int i = 0; z < to; i++) {
      double wide = 0.05 + 0.07 * Noise.unit(i, row, 41);
      double tall = 0.14 + 0.2 * Noise.unit(i, row, 42);
      if (Noise.unit(i, row, 43) > 0.18) {
        scenery.box(AXES, p(-6.12, y, z), p(-6.0, y + tall, z + wide), Textures::shelfware);
      }
      z += wide + 0.02 + 0.05 * Noise.unit(i, row, 44);
    }
  }

  private void tables() {
    double[][] places = {
      {-1.3, 2.1}, {-1.3, 5.2}, {-1.3, 8.3}, {-3.2, 3.6}, {-3.2, 6.9}, {-5.2, 1.3}
    };
    for (double[] at : places) {
      double x = at[0];
      double z = at[1];
      scenery.box(
          AXES, p(x - 0.38, 0.72, z - 0.38), p(x + 0.38, 0.76, z + 0.38), Textures::roomOak);
      scenery.box(AXES, p(x - 0.04, 0, z - 0.04), p(x + 0.04, 0.72, z + 0.04), Textures::roomOak);
      chair(x, z - 0.62, -1);
      chair(x, z + 0.62, 1);
      scenery.box(
          AXES, p(x - 0.05, 0.76, z + 0.05), p(x + 0.02, 0.93, z + 0.12), Textures::shelfware);
    }
  }

  private void chair(double x, double z, double back) {
    scenery.box(AXES, p(x - 0.2, 0.43, z - 0.2), p(x + 0.2, 0.47, z + 0.2), Textures::roomOak);
    double b = z + 0.2 * back;
    scenery.box(AXES, p(x - 0.2, 0.47, b - 0.02), p(x + 0.2, 0.92, b + 0.02), Textures::roomOak);
    for (int i = 0; i < 4; i++) {
      double lx = x + ((i & 1) == 0 ? -0.18 : 0.18);
      double lz = z + ((i & 2) == 0 ? -0.18 : 0.18);
      scenery.box(
          AXES, p(lx - 0.02, 0, lz - 0.02), p(lx + 0.02, 0.43, lz + 0.02), Textures::roomOak);
    }
  }

  private void lamps() {
    double[][] places = {
      {-1.3, 2.1}, {-1.3, 5.2}, {-1.3, 8.3}, {-3.2, 3.6}, {-3.2, 6.9}, {-5.1, 5.0}, {-5.2, 1.3}
    };
    for (double[] at : places) {
      Vec lamp = AXES.point(at[0], 1.88, at[1]);
      scenery.roomLamps.add(lamp);
      scenery.add(new Ball(lamp, 0.10, Textures::roomLamp, scenery.seed()));
      scenery.rod(
          lamp.plus(new Vec(0, 0.1, 0)), AXES.point(at[0], WALL, at[1]), 0.008, Textures::iron);
    }
  }
}
