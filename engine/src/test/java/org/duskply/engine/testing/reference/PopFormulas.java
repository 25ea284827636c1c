package org.duskply.engine.testing.reference;

/** What a pop makes of one pixel in plain double. */
public final class PopFormulas {
  private static final double NOISE = 1 / 1024.0;

  private PopFormulas() {}

  /** The greater of each channel. */
  public static double[] lighter(double[] below, double[] frame) {
    double[] out = new double[3];
    for (int c = 0; c < 3; c++) {
      out[c] = below[c] > frame[c] ? below[c] : frame[c];
    }
    return out;
  }

  /** The brighter by luminance, softly within a tenth of a stop. */
  public static double[] brighter(double[] weights, double[] below, double[] frame) {
    double q = compared(weights, frame) / compared(weights, below);
    double share = Smooth.of(-0.1, 0.1, StrictMath.log(q) / StrictMath.log(2));
    double[] out = new double[3];
    for (int c = 0; c < 3; c++) {
      out[c] = below[c] + (frame[c] - below[c]) * share;
    }
    return out;
  }

  /** Luminance as it is compared. */
  public static double compared(double[] weights, double[] c) {
    return Math.max(AdjustFormulas.luminance(weights, c[0], c[1], c[2]), 0) + NOISE;
  }
}
