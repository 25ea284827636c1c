package org.duskply.examples.trace;

/**
 * Evenly spread random numbers that depend on nothing but pixel, sample and purpose: a hash of
 * pixel and purpose, moved on by a fixed irrational step a sample (two steps that spread evenly
 * over a square, for even and odd purposes).
 */
public final class Sampler {
  private static final double STEP = 0.5698402909980532;
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
    return value(purpose, 1, 0);
  }

  /** The same where every sample asks {@code count} times; {@code i} says which time. */
  public double value(int purpose, int count, int i) {
    double step = (purpose & 1) == 0 ? STEP : OTHER_STEP;
    return Maths.fraction(Noise.unit(pixel, purpose, 77) + (sample * count + i) * step);
  }
}
