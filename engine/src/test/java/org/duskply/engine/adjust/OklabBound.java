package org.duskply.engine.adjust;

import org.duskply.engine.colour.Oklab;

/**
 * How errors of float go through Oklab and back. With u = 2⁻²⁴: a cone value is off by 4u of the
 * sum of its parts, its root by what that does to the root and 1u; at the end cubes are off by
 * three times what the new roots are and 2u; the last matrix by what it does to these and 4u of the
 * sum of its parts.
 */
final class OklabBound {
  static final Oklab OKLAB = Oklab.of(Working.SPACE);
  static final double UNIT = 0x1p-24;

  private OklabBound() {}

  /**
   * The roots of a colour's cones.
   *
   * @param greatest the greatest in size
   * @param off how far any may be off
   */
  record Roots(double greatest, double off) {
    static Roots of(double[] in) {
      double off = 0;
      double greatest = 0;
      for (int i = 0; i < 3; i++) {
        double cone = 0;
        double parts = 0;
        for (int p = 0; p < 3; p++) {
          cone += OKLAB.toLms()[3 * i + p] * in[p];
          parts += Math.abs(OKLAB.toLms()[3 * i + p] * in[p]);
        }
        double offCone = 4 * UNIT * parts;
        double root = StrictMath.cbrt(Math.abs(cone));
        double toRoot =
            Math.max(
                StrictMath.cbrt(Math.abs(cone) + offCone) - root,
                root - StrictMath.cbrt(Math.abs(cone) - offCone));
        off = Math.max(off, toRoot + UNIT * root);
        greatest = Math.max(greatest, root);
      }
      return new Roots(greatest, off);
    }

    /** What the colour made of them may be off. */
    double ofColour() {
      double cube = greatest * greatest * greatest;
      double offCube = 3 * greatest * greatest * off + 3 * greatest * off * off + off * off * off;
      return widestRow(OKLAB.fromLms()) * (offCube + 2 * UNIT * cube + 4 * UNIT * cube) + 1e-30;
    }
  }

  /** The greatest sum of the sizes of a row's numbers. */
  static double widestRow(double[] matrix) {
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
