package org.duskply.engine.testing;

/** A reproducible sequence of samples, evenly spread over 0…1 in 32,768 levels. */
public final class Sequence {
  private int state;

  public Sequence(int seed) {
    this.state = seed;
  }

  /** The next sample: {@code s ← (1103515245·s + 12345) mod 2³¹}, then {@code (s >> 16)/32767}. */
  public double next() {
    state = (1103515245 * state + 12345) & 0x7fffffff;
    return (state >> 16) / 32767d;
  }

  /** The next {@code count} samples, stretched over {@code from … to}. */
  public float[] next(int count, double from, double to) {
    float[] samples = new float[count];
    for (int i = 0; i < count; i++) {
      samples[i] = (float) (from + (to - from) * next());
    }
    return samples;
  }
}
