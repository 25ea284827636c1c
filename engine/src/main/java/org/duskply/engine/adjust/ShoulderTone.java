package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.recipe.adjust.Shoulder;

/**
 * The {@link Tone} of a shoulder, in linear light (Reinhard et al. 2002, Photographic tone
 * reproduction for digital images, equation 4, on the part above {@code begins}):
 *
 * <pre>
 * u  = (x − begins)/(1 − begins)     w = (white-at − begins)/(1 − begins)
 * x' = begins + (1 − begins)·u·(1 + u/w²)/(1 + u)
 * </pre>
 *
 * <p>Slope 1 at {@code begins}; 1 at {@code white-at}, and 1 beyond.
 */
final class ShoulderTone {
  private ShoulderTone() {}

  static Tone of(Shoulder shoulder) {
    double begins = shoulder.begins();
    double whiteAt = shoulder.whiteAt();
    double room = 1 - begins;
    double w = (whiteAt - begins) / room;
    return new Tone(
        x -> {
          if (x <= begins) {
            return x;
          }
          double u = (x - begins) / room;
          return x >= whiteAt ? 1 : begins + room * u * (1 + u / (w * w)) / (1 + u);
        },
        List.of(begins, whiteAt));
  }
}
