package org.duskply.engine.colour;

import java.util.function.DoubleUnaryOperator;

/**
 * A curve from 0…1 to 0…1 by evenly spaced samples with straight lines between them, as the stages
 * of {@link LookUpTables} have it. Beyond its ends it is flat. Immutable.
 */
final class TableCurve {
  /** Samples that a formula is written out to: one a 16-bit code. */
  private static final int FINE = 1 << 16;

  private static final TableCurve IDENTITY = new TableCurve(0, 1);

  private final double[] samples;

  /** A curve through these samples, at least two. */
  TableCurve(double... samples) {
    this.samples = samples;
  }

  static TableCurve identity() {
    return IDENTITY;
  }

  /** A formula, written out, its values held to 0…1. */
  static TableCurve of(DoubleUnaryOperator formula) {
    double[] samples = new double[FINE];
    for (int i = 0; i < FINE; i++) {
      double v = formula.applyAsDouble(i / (FINE - 1.0));
      samples[i] = v > 0 ? Math.min(v, 1) : 0;
    }
    return new TableCurve(samples);
  }

  double at(double v) {
    double place = (v > 0 ? Math.min(v, 1) : 0) * (samples.length - 1);
    int below = Math.min((int) place, samples.length - 2);
    return samples[below] + (place - below) * (samples[below + 1] - samples[below]);
  }
}
