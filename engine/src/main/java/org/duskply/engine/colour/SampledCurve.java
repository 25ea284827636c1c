package org.duskply.engine.colour;

import java.util.Arrays;

/**
 * Straight lines between samples at even steps from 0 to 1. Above 1 it goes on with the slope of
 * the last piece, or of the line from the origin where that is steeper, so that order above white
 * survives. The inverse is that of the highest value so far, for tables that fall back in places.
 */
final class SampledCurve implements TransferCurve {
  private final double[] samples;
  private final double[] highest;
  private final double slopeAbove;

  SampledCurve(double... samples) {
    this.samples = samples.clone();
    this.highest = samples.clone();
    for (int i = 1; i < highest.length; i++) {
      highest[i] = StrictMath.max(highest[i], highest[i - 1]);
    }
    int last = samples.length - 1;
    this.slopeAbove = StrictMath.max((samples[last] - samples[last - 1]) * last, samples[last]);
  }

  @Override
  public double toLinear(double encoded) {
    return encoded < 0 ? 2 * samples[0] - forward(-encoded) : forward(encoded);
  }

  @Override
  public double toEncoded(double linear) {
    return linear < samples[0] ? -inverse(2 * samples[0] - linear) : inverse(linear);
  }

  /** The linear values, rising from black up, at which the inverse has a corner. */
  double[] corners() {
    return Arrays.stream(highest).distinct().toArray();
  }

  private double forward(double v) {
    int last = samples.length - 1;
    if (v >= 1) {
      return samples[last] + (v - 1) * slopeAbove;
    }
    double at = v * last;
    int i = (int) at;
    return samples[i] + (at - i) * (samples[i + 1] - samples[i]);
  }

  private double inverse(double l) {
    int last = highest.length - 1;
    if (l > highest[last]) {
      return 1 + (l - highest[last]) / slopeAbove;
    }
    int i = firstNotBelow(l);
    if (i == 0) {
      return 0;
    }
    double below = highest[i - 1];
    return (i - 1 + (l - below) / (highest[i] - below)) / last;
  }

  /** The first index whose highest value so far reaches {@code l}. */
  private int firstNotBelow(double l) {
    int low = 0;
    int high = highest.length - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (highest[middle] < l) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof SampledCurve other && Arrays.equals(samples, other.samples);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(samples);
  }

  @Override
  public String toString() {
    return "SampledCurve of " + samples.length;
  }
}
