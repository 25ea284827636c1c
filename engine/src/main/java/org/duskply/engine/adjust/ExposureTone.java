package org.duskply.engine.adjust;

import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Exposure;

/** More or less light: {@code x·2^stops}. */
final class ExposureTone {
  private ExposureTone() {}

  static boolean identity(Exposure exposure) {
    return exposure.stops() == 0;
  }

  static Tone of(Exposure exposure) {
    double factor = factor(exposure.stops());
    return new Tone(Axis.LINEAR, x -> x * factor);
  }

  static double factor(double stops) {
    return StrictMath.pow(2, stops);
  }
}
