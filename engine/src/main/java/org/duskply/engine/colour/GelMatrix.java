package org.duskply.engine.colour;

import java.util.Arrays;
import org.duskply.recipe.adjust.Gel;
import org.jspecify.annotations.Nullable;

/**
 * A gel as a matrix on linear working RGB: {@code toXyz⁻¹ · Bradford(from, to) · toXyz}, both
 * whites of luminance 1, so that light of colour {@code from} becomes as much light of colour
 * {@code to}.
 *
 * <pre>
 * mired n      from 10⁶/(200 − n/2) K to 10⁶/(200 + n/2) K: −n is the inverse of n
 * from, to     as given
 * neither      5000 K to 5000 K
 * plus-green   moves the target alone, to plus-green/1000 beside the {@link LightLocus}
 * </pre>
 */
public final class GelMatrix {
  private static final double MIDDLE_MIRED = 200;
  private static final double MIDDLE_KELVIN = 5000;

  /**
   * The least cone response of a target. Strong green in a warm light would leave less than none of
   * the blue; a gel cannot, so it is held here, a fifth of what the warmest light has.
   */
  private static final double LEAST_CONE = 1.0 / 64;

  private GelMatrix() {}

  /**
   * The matrix of a gel, nine numbers row by row; exactly the identity where both lights are one.
   *
   * @param working the space of the linear values
   */
  public static double[] of(Gel gel, ColourSpace working) {
    double[] from = White.ofChromaticity(LightLocus.at(from(gel)));
    double[] to = White.ofChromaticity(LightLocus.beside(to(gel), gel.plusGreen() / 1000));
    if (Arrays.equals(from, to)) {
      return Matrix3.identity();
    }
    double[] adapted = Bradford.between(from, Bradford.held(to, LEAST_CONE));
    double[] toXyz = working.toXyz();
    return Matrix3.multiply(Matrix3.inverse(toXyz), Matrix3.multiply(adapted, toXyz));
  }

  /** Kelvin of the light as it was. */
  public static double from(Gel gel) {
    return kelvin(gel.mired(), -0.5, gel.from());
  }

  /** Kelvin of the light as it is to be, plus-green aside. */
  public static double to(Gel gel) {
    return kelvin(gel.mired(), 0.5, gel.to());
  }

  private static double kelvin(@Nullable Double mired, double share, @Nullable Double given) {
    if (mired != null) {
      return 1e6 / (MIDDLE_MIRED + share * mired);
    }
    return given != null ? given : MIDDLE_KELVIN;
  }
}
