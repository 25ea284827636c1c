package org.duskply.benchmarks.kernels;

import java.util.SplittableRandom;

/** What a picture shows, which counts where a kernel takes one way or another for each pixel. */
public enum Content {
  /** Broad and narrow shapes, grain, and lamps above white, as photographs have them. */
  VIEW {
    @Override
    float at(int x, int y, int plane, double dice) {
      double broad = 0.3 * wave(x / 440.0 + y / 57.0 + plane / 6.0);
      double narrow = 0.15 * wave((x + 3 * y) / 145.0 + plane / 3.0);
      double lamp = (x + 57 * y) % 199 < 6 ? 1.5 : 0;
      return (float) (0.45 + broad + narrow + lamp + 0.006 * (dice - 0.5));
    }
  },

  /** Any value from 0 to 1 beside any other: no guess of the processor comes true. */
  NOISE {
    @Override
    float at(int x, int y, int plane, double dice) {
      return (float) dice;
    }
  };

  /** Pixels of a row. */
  static final int ROW = 512;

  /** Up to 1 and down to −1 in arcs of parabolas, once from each whole number to the next. */
  private static double wave(double t) {
    double u = 2 * (t - Math.floor(t));
    return u < 1 ? 4 * u * (1 - u) : 4 * (u - 1) * (u - 2);
  }

  abstract float at(int x, int y, int plane, double dice);

  /** One plane of so many pixels in rows of {@link #ROW}, another for each number. */
  float[] plane(int pixels, int number) {
    SplittableRandom random = new SplittableRandom(number);
    float[] values = new float[pixels];
    for (int i = 0; i < pixels; i++) {
      values[i] = at(i % ROW, i / ROW, number, random.nextDouble());
    }
    return values;
  }

  /** Three planes, others for each number. */
  float[][] picture(int pixels, int number) {
    float[][] planes = new float[3][];
    for (int p = 0; p < 3; p++) {
      planes[p] = plane(pixels, 3 * number + p);
    }
    return planes;
  }
}
