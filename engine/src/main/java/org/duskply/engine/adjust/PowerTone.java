package org.duskply.engine.adjust;

import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Power;

/** A power of the encoded value: {@code sign(v)·|v|^p}. */
final class PowerTone {
  private PowerTone() {}

  static boolean identity(Power power) {
    return power.power() == 1;
  }

  static Tone of(Power power) {
    double p = power.power();
    return new Tone(Axis.ENCODED, v -> Math.copySign(StrictMath.pow(Math.abs(v), p), v));
  }
}
