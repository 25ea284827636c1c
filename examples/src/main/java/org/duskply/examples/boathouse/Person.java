package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Ball;
import org.duskply.examples.trace.Block;
import org.duskply.examples.trace.Rod;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Vec;

/**
 * The assistant in dark clothes who holds a flash on a pole, and who is in view for one pop only.
 */
final class Person {
  /** Where the assistant stands. */
  static final Vec FOOT = new Vec(-6.75, 0.74, 14.7);

  /** Where the head of the flash is held. */
  static final Vec HEAD = new Vec(-5.40, 2.30, 13.10);

  private Person() {}

  static void build(Scenery scenery) {
    Vec hip = FOOT.plus(new Vec(0.02, 0.92, 0));
    Vec chest = hip.plus(new Vec(0.03, 0.42, -0.04));
    for (int side = -1; side <= 1; side += 2) {
      Vec shoe = FOOT.plus(new Vec(0.12 * side, 0.05, -0.05 * side));
      Vec knee = FOOT.plus(new Vec(0.11 * side, 0.48, -0.06));
      cloth(scenery, shoe, knee, 0.06, 0.075);
      cloth(scenery, knee, hip.plus(new Vec(0.07 * side, 0, 0)), 0.075, 0.10);
      scenery.add(
          new Ball(shoe.plus(new Vec(0, 0, -0.06)), new Vec(0.06, 0.05, 0.13), Textures::coat, 1));
    }
    scenery.add(
        new Ball(hip.plus(new Vec(0, 0.05, 0)), new Vec(0.19, 0.24, 0.15), Textures::coat, 2));
    scenery.add(new Ball(chest, new Vec(0.225, 0.34, 0.165), Textures::coat, 3));
    scenery.add(
        new Ball(
            chest.plus(new Vec(0.02, 0.47, -0.02)),
            new Vec(0.095, 0.125, 0.105),
            Textures::skin,
            4));
    scenery.add(
        new Ball(
            chest.plus(new Vec(0.02, 0.54, 0.0)), new Vec(0.107, 0.085, 0.115), Textures::coat, 5));
    Vec grip = chest.plus(new Vec(0.30, -0.12, -0.30));
    Vec high = grip.towards(HEAD, 0.3);
    arm(
        scenery,
        chest.plus(new Vec(-0.20, 0.20, 0)),
        chest.plus(new Vec(-0.22, -0.12, -0.18)),
        grip);
    arm(scenery, chest.plus(new Vec(0.20, 0.20, 0)), chest.plus(new Vec(0.36, 0.05, -0.2)), high);
    Vec end = grip.plus(grip.minus(HEAD).times(0.35));
    scenery.rod(end, HEAD, 0.014, Textures::iron);
    Axes flash = Axes.along(HEAD, HEAD.plus(new Vec(0.15, -0.75, -0.6)));
    scenery.add(new Block(flash, 0.16, 0.09, 0.12, Textures::iron, 6));
    scenery.add(new Block(flash.at(0.09, 0, 0), 0.03, 0.10, 0.14, Person::tube, 7));
  }

  /** The front of the flash head, far brighter than the film can hold. */
  private static void tube(Surface s) {
    s.colour(0.8, 0.8, 0.8);
    s.lamp(Lights.FLASH + Flashes.WITH_PERSON, 30, 26, 18);
  }

  private static void arm(Scenery scenery, Vec shoulder, Vec elbow, Vec hand) {
    cloth(scenery, shoulder, elbow, 0.075, 0.058);
    cloth(scenery, elbow, hand, 0.058, 0.042);
    scenery.add(new Ball(shoulder, 0.08, Textures::coat, 8));
    scenery.add(new Ball(elbow, 0.058, Textures::coat, 9));
    scenery.add(new Ball(hand, 0.05, Textures::skin, 10));
  }

  private static void cloth(Scenery scenery, Vec from, Vec to, double r0, double r1) {
    scenery.add(new Rod(from, to, r0, r1, Textures::coat, scenery.seed()));
  }
}
