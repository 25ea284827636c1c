package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;

/**
 * A tone curve of luminance: {@code Y' = L(t(E(Y)))}, or {@code t(Y)} on the linear axis, set as
 * {@link NewLuminance} says.
 */
final class LuminanceToneKernel implements AdjustKernel {
  private final Segments curve;
  private final float ofRed;
  private final float ofGreen;
  private final float ofBlue;

  private LuminanceToneKernel(Segments curve, double[] weights) {
    this.curve = curve;
    this.ofRed = (float) weights[0];
    this.ofGreen = (float) weights[1];
    this.ofBlue = (float) weights[2];
  }

  /**
   * The kernel of one tone.
   *
   * @param tone not steep at nought
   * @param weights of red, green and blue in luminance, summing to 1
   */
  static LuminanceToneKernel prepare(Tone tone, Axis axis, double[] weights) {
    return new LuminanceToneKernel(Tone.thereAndBack(List.of(tone), axis)[0], weights);
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    for (int i = from; i < to; i++) {
      float y = ofRed * red[i] + ofGreen * green[i] + ofBlue * blue[i];
      NewLuminance.set(red, green, blue, i, y, curve.apply(y));
    }
  }
}
