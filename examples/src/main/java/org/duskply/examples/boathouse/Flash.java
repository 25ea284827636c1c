package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Vec;

/**
 * One pop of a hand-held flash: a soft-edged cone of light from a small head.
 *
 * @param at where the head is held
 * @param towards where it points
 * @param cone half the opening angle of the beam in degrees; light falls off towards it
 * @param power light on a surface one metre away, in units of the picture's full scale
 * @param radius size of the head or its diffuser, in metres
 * @param warmth 0 for the bare head, 1 for a full warming gel
 */
record Flash(Vec at, Vec towards, double cone, double power, double radius, double warmth) {
  Vec axis() {
    return towards.minus(at).unit();
  }

  double edge() {
    return Maths.cos(Math.toRadians(cone));
  }

  double red() {
    return 1;
  }

  double green() {
    return Maths.mix(0.93, 0.70, warmth);
  }

  double blue() {
    return Maths.mix(0.90, 0.36, warmth);
  }

  /** The distance at which a pop has faded out. */
  double reach() {
    return 8 * Math.sqrt(power);
  }
}
