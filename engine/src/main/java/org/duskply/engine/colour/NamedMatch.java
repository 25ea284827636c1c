package org.duskply.engine.colour;

import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * Which named space a profile's numbers are: the one whose primaries, adapted to the white that
 * profiles store, lie within {@link #TOLERANCE} in each of the nine numbers, and whose curve lies
 * as near at {@link #POINTS} even points in each channel. Descriptions never count.
 *
 * <p>Files round their numbers and thin out their curves in many ways; what differs by less than
 * this is meant to be the same space, and exact numbers then make codes come back exactly.
 */
final class NamedMatch {
  static final double TOLERANCE = 0.0005;
  static final int POINTS = 17;

  private NamedMatch() {}

  /**
   * The named space, or null if the numbers are those of none.
   *
   * @param columns linear RGB to XYZ under the white that profiles store
   */
  static @Nullable NamedSpace find(double[] columns, TransferCurve... curves) {
    for (NamedSpace name : NamedSpace.values()) {
      ColourSpace space = ColourSpace.of(name);
      if (near(columns, adapted(space)) && near(curves, space.curve(0))) {
        return name;
      }
    }
    return null;
  }

  /** Linear RGB to XYZ under the white that profiles store. */
  static double[] adapted(ColourSpace space) {
    double[] adaptation = Bradford.between(space.white(), White.profileConnection());
    return Matrix3.multiply(adaptation, space.toXyz());
  }

  private static boolean near(double[] columns, double[] expected) {
    for (int i = 0; i < 9; i++) {
      if (!near(columns[i], expected[i])) {
        return false;
      }
    }
    return true;
  }

  private static boolean near(TransferCurve[] curves, TransferCurve expected) {
    for (TransferCurve curve : curves) {
      for (int i = 0; i < POINTS; i++) {
        double v = i / (POINTS - 1.0);
        if (!near(curve.toLinear(v), expected.toLinear(v))) {
          return false;
        }
      }
    }
    return true;
  }

  private static boolean near(double a, double b) {
    return StrictMath.abs(a - b) <= TOLERANCE;
  }
}
