package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.recipe.adjust.Power;

/** The {@link Tone} of a power, on the encoded axis: {@code v^p}, odd below 0. */
final class PowerTone {
  private PowerTone() {}

  static Tone of(Power power) {
    double p = power.power();
    return new Tone(v -> Math.copySign(StrictMath.pow(Math.abs(v), p), v), List.of(), p < 1);
  }
}
