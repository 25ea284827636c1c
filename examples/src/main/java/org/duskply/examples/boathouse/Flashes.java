package org.duskply.examples.boathouse;

import java.util.List;
import org.duskply.examples.trace.Vec;

/** Where the fourteen pops were held, in the order in which they were taken. */
final class Flashes {
  static final int HULL = 0;
  static final int PONTOON_NEAR = 1;
  static final int PONTOON_FAR = 2;
  static final int REEDS = 3;
  static final int CHAIRS = 4;
  static final int STEPS = 5;
  static final int WALL = 6;
  static final int GABLE = 7;
  static final int EAVES = 8;
  static final int SIDE = 9;
  static final int ROOF = 10;
  static final int WILLOW = 11;
  static final int TRUNK = 12;
  static final int PILES = 13;

  /** The pop during which the assistant stands in the picture. */
  static final int WITH_PERSON = STEPS;

  static final List<Flash> ALL =
      List.of(
          pop(2.4, 1.7, 6.6, 1.6, 0.25, 9.3, 42, 2.6, 0),
          pop(-4.4, 2.0, 5.0, -2.3, 0.4, 7.6, 44, 5.0, 0.25),
          pop(-3.9, 2.3, 10.0, -1.6, 0.4, 12.3, 40, 4.2, 0.25),
          pop(-2.6, 1.5, 6.3, -4.4, 0.7, 7.8, 40, 3.4, 0.2),
          pop(-4.9, 2.9, 14.4, -1.7, 1.1, 17.3, 34, 7.5, 0.7),
          new Flash(Person.HEAD, new Vec(-5.3, 0.1, 11.9), 62, 3.2, 0.10, 0.8),
          pop(-2.4, 1.6, 13.9, -4.3, 0.4, 15.0, 48, 4.2, 0.15),
          pop(-1.4, 1.5, 11.4, -0.4, 4.2, 17.6, 34, 19, 0.35),
          pop(0.4, 1.0, 12.6, 1.2, 3.4, 15.3, 46, 7, 0.35),
          pop(7.4, 2.0, 12.6, 5.0, 2.1, 17.9, 52, 20, 0.2),
          pop(3.4, 9.0, 10.6, 4.4, 5.2, 17.8, 52, 52, 0),
          pop(4.9, 1.2, 12.4, 7.4, 3.6, 15.8, 40, 15, 0.1),
          pop(6.2, 1.3, 13.0, 8.1, 1.2, 15.6, 34, 11, 0.45),
          pop(-0.9, 0.8, 10.1, 2.4, 0.1, 13.2, 44, 7, 0));

  private Flashes() {}

  private static Flash pop(
      double x,
      double y,
      double z,
      double toX,
      double toY,
      double toZ,
      double cone,
      double power,
      double warmth) {
    return new Flash(new Vec(x, y, z), new Vec(toX, toY, toZ), cone, power, 0.16, warmth);
  }
}
