package org.duskply.engine.adjust;

import org.duskply.recipe.adjust.Exposure;

/** More or less light: {@code x' = x·2^stops}, one rounded product a sample. */
final class ExposureKernel implements AdjustKernel {
  private final float factor;

  private ExposureKernel(float factor) {
    this.factor = factor;
  }

  static ExposureKernel prepare(Exposure exposure) {
    return new ExposureKernel((float) StrictMath.pow(2, exposure.stops()));
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    run(red, from, to, factor);
    run(green, from, to, factor);
    run(blue, from, to, factor);
  }

  private static void run(float[] v, int from, int to, float factor) {
    for (int i = from; i < to; i++) {
      v[i] *= factor;
    }
  }
}
