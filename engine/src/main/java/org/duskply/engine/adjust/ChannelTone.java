package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Exposure;
import org.jspecify.annotations.Nullable;

/**
 * What a run of tones does to one channel: nothing, a product where only exposures act on it, or a
 * prepared curve.
 */
final class ChannelTone {
  private final float factor;
  private final @Nullable Segments curve;

  private ChannelTone(float factor, @Nullable Segments curve) {
    this.factor = factor;
    this.curve = curve;
  }

  /** What {@code run} does, adjustments each of which has a {@link Tone}. */
  static ChannelTone of(List<Adjustment> run) {
    double stops = 0;
    boolean onlyExposures = true;
    for (Adjustment adjustment : run) {
      if (adjustment instanceof Exposure exposure) {
        stops += exposure.stops();
      } else {
        onlyExposures = false;
      }
    }
    return onlyExposures
        ? new ChannelTone((float) ExposureTone.factor(stops), null)
        : new ChannelTone(1, new ToneRun(Bindings.tones(run)).prepare());
  }

  void run(float[] v, int from, int to) {
    if (curve != null) {
      curve.apply(v, from, to);
    } else if (factor != 1) {
      scale(v, from, to, factor);
    }
  }

  private static void scale(float[] v, int from, int to, float factor) {
    for (int i = from; i < to; i++) {
      v[i] *= factor;
    }
  }
}
