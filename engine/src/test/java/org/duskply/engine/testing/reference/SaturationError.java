package org.duskply.engine.testing.reference;

import org.duskply.engine.colour.Oklab;

/**
 * How far a colour whose saturation was changed in float may be from the formula: three steps'
 * errors carried through, with u = 2⁻²⁴. A cone value is off by 4u of the sum of its parts, its
 * root by what that does to the root and 1u; the new roots by (1 + 2·factor) times the greatest of
 * it and 6u of their parts; their cubes by three times that and 2u; the last matrix by what it does
 * to these and 4u of the sum of its parts.
 */
final class SaturationError {
  private static final double UNIT = Estimate.UNIT;

  private SaturationError() {}

  static double of(Oklab oklab, double factor, double[] in) {
    double offRoot = 0;
    double greatestRoot = 0;
    for (int i = 0; i < 3; i++) {
      double cone = 0;
      double parts = 0;
      for (int p = 0; p < 3; p++) {
        cone += oklab.toLms()[3 * i + p] * in[p];
        parts += Math.abs(oklab.toLms()[3 * i + p] * in[p]);
      }
      double off = 4 * UNIT * parts;
      double root = StrictMath.cbrt(cone);
      double up = StrictMath.cbrt(cone + off) - root;
      double down = root - StrictMath.cbrt(cone - off);
      offRoot = Math.max(offRoot, Math.max(up, down) + UNIT * Math.abs(root));
      greatestRoot = Math.max(greatestRoot, Math.abs(root));
    }
    // |l₀| + |l₁| + |l₂| = 1.01: lightness is at most 1.01 times the greatest root.
    double newRoot = (1.01 + 2.02 * factor) * greatestRoot;
    double offNew = (1.01 + 2.02 * factor) * offRoot + 6 * UNIT * newRoot;
    double cube = newRoot * newRoot * newRoot;
    double offCube = 3 * newRoot * newRoot * offNew + offNew * offNew * offNew + 2 * UNIT * cube;
    return widestRow(oklab.fromLms()) * (offCube + 4 * UNIT * cube);
  }

  private static double widestRow(double[] matrix) {
    double widest = 0;
    for (int row = 0; row < 3; row++) {
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        sum += Math.abs(matrix[3 * row + i]);
      }
      widest = Math.max(widest, sum);
    }
    return widest;
  }
}
