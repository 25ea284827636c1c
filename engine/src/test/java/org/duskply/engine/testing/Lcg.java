package org.duskply.engine.testing;

/**
 * Pictures of noise that are the same everywhere: {@code s = (1103515245·s + 12345) mod 2³¹}, of
 * which the upper fifteen bits count, 0 to 1.
 */
public final class Lcg {
  private long state;

  /** A sequence of its own for each seed. */
  public Lcg(long seed) {
    this.state = seed;
  }

  /** The next number, 0 to 1. */
  public double next() {
    state = (1103515245L * state + 12345) & 0x7fffffff;
    return (state >> 16) / 32767.0;
  }

  /** The next {@code count} numbers, from {@code low} to {@code high}. */
  public float[] samples(int count, double low, double high) {
    float[] samples = new float[count];
    for (int i = 0; i < count; i++) {
      samples[i] = (float) (low + (high - low) * next());
    }
    return samples;
  }
}
