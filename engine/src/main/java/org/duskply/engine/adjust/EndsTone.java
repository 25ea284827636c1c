package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.recipe.adjust.Ends;

/** The {@link Tone} of ends, on the encoded axis: {@code max(0, (v − black)/(white − black))}. */
final class EndsTone {
  private EndsTone() {}

  static Tone of(Ends ends) {
    double black = ends.black();
    double range = ends.white() - black;
    return new Tone(v -> Math.max(0, (v - black) / range), List.of(black));
  }
}
