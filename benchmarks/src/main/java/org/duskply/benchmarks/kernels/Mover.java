package org.duskply.benchmarks.kernels;

import org.duskply.engine.blend.BlendKernel;
import org.duskply.engine.blend.Blends;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.engine.plan.Mix;
import org.duskply.recipe.step.Blend;

/** A kernel that does little but move bytes, and how many of a pixel it must move. */
public enum Mover {
  /** The greater of two pictures, into a third: 24 bytes read, 12 written. */
  MAX(36) {
    @Override
    void run(Pictures on, int from, int to) {
      LIGHTEN.run(on.below(), on.frame(), on.out(), from, to);
    }

    @Override
    double[] formula(double[] below, double[] frame, double mask, double[] before) {
      double[] want = new double[3];
      for (int c = 0; c < 3; c++) {
        want[c] = below[c] > frame[c] ? below[c] : frame[c];
      }
      return want;
    }
  },

  /**
   * A frame mixed by a mask into the picture below, in place: 28 bytes read, since the mask serves
   * three planes, and 12 written.
   */
  MIX(40) {
    @Override
    void run(Pictures on, int from, int to) {
      for (int p = 0; p < 3; p++) {
        Mix.between(on.frame()[p], on.mask(), OPACITY, on.out()[p], from, to);
      }
    }

    @Override
    double[] formula(double[] below, double[] frame, double mask, double[] before) {
      double[] want = new double[3];
      for (int c = 0; c < 3; c++) {
        want[c] = before[c] + mask * OPACITY * (frame[c] - before[c]);
      }
      return want;
    }
  },

  /** A matrix, in place: 12 bytes read, 12 written. */
  MATRIX(24) {
    @Override
    void run(Pictures on, int from, int to) {
      MatrixKernel.run(on.out()[0], on.out()[1], on.out()[2], from, to, COEFFICIENTS);
    }

    @Override
    double[] formula(double[] below, double[] frame, double mask, double[] before) {
      return Matrix3.apply(MATRIX_ROWS, before[0], before[1], before[2]);
    }
  };

  private static final BlendKernel LIGHTEN = Blends.of(Blend.LIGHTEN);
  private static final float OPACITY = 0.625f;

  /** Rows sum to 1, so that done over and over it leads nowhere but to grey. */
  private static final double[] MATRIX_ROWS = {0.7, 0.2, 0.1, 0.1, 0.8, 0.1, 0.1, 0.2, 0.7};

  private static final float[] COEFFICIENTS = MatrixKernel.prepare(MATRIX_ROWS);

  private final int bytes;

  Mover(int bytes) {
    this.bytes = bytes;
  }

  /**
   * What kernels work on.
   *
   * @param below three planes, read
   * @param frame three planes, read
   * @param mask between 0 and 1, read
   * @param out three planes, written, and by kernels that work in place read
   */
  record Pictures(float[][] below, float[][] frame, float[] mask, float[][] out) {}

  /** Bytes of a pixel that it must move. */
  int bytes() {
    return bytes;
  }

  abstract void run(Pictures on, int from, int to);

  /**
   * In double.
   *
   * @param before what stood in the result
   */
  abstract double[] formula(double[] below, double[] frame, double mask, double[] before);
}
