package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Adjustment;

/** A run of tones on the luminance, which {@link NewLuminance} gives to the pixel. */
final class LuminanceKernel implements AdjustKernel {
  private final float[] weights;
  private final Segments curve;

  private LuminanceKernel(float[] weights, Segments curve) {
    this.weights = weights;
    this.curve = curve;
  }

  static LuminanceKernel prepare(List<Adjustment> run, ColourSpace working) {
    return new LuminanceKernel(
        NewLuminance.weights(working), new ToneRun(Bindings.tones(run)).prepare());
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    NewLuminance.run(red, green, blue, from, to, weights, curve);
  }
}
