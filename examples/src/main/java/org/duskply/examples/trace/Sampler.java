package org.duskply.examples.trace;

/**
 * Evenly spread random numbers that depend on nothing but pixel, sample and purpose: a hash of pixel
 * and purpose, moved on by a golden step a sample.
 */
public final class Sampler {
  private static final double STEP = 0.6180339887498949;
  private static final double OTHER_STEP = 0.7548776662466927;
  private int pixel;
  private int sample;

  /** Turns to a sample of a pixel. */
  public void at(int x, int y, int sampleNumber) {
    pixel = Noise.hash(x, y, 0x51ED);
    sample = sampleNumber;
  }

  /** The number for one purpose, 0 ≤ v &lt; 1. */
  public double value(int purpose) {
    double step = (purpose & 1) == 0 ? STEP : OTHER_STEP;
    return Maths.fraction(Noise.unit(pixel, purpose, 77) + sample * step);
  }
}
