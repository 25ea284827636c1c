package org.duskply.engine.colour;

import java.util.EnumMap;
import java.util.Map;
import org.duskply.recipe.NamedSpace;

/**
 * The published numbers of the five named spaces: chromaticities of primaries and white, and the
 * curve.
 *
 * <ul>
 *   <li>{@code srgb}: IEC 61966-2-1.
 *   <li>{@code display-p3}: the primaries of SMPTE RP 431-2 with D65 and the curve of srgb, as in
 *       CSS Color 4.
 *   <li>{@code a98-rgb}: IEC 61966-2-5 (opRGB), a power of 563/256.
 *   <li>{@code prophoto-rgb}: ISO 22028-2 (ROMM RGB), primaries to six digits as in CSS Color 4, a
 *       power of 1.8 with a toe of slope 1/16 below 16/512.
 *   <li>{@code rec2020}: ITU-R BT.2020-2, the camera curve and its inverse. α and β solve the
 *       standard's own pair of equations (4.5β = αβ^0.45 − α + 1 and 4.5 = 0.45αβ^−0.55), of which
 *       its printed 1.0993 and 0.0181 are the four-digit form for 12 bits: the rounded pair would
 *       let the curve fall by 3·10⁻⁶ at the join.
 * </ul>
 */
final class NamedNumbers {
  /** Solves BT.2020-2's equations for α. */
  static final double ALPHA = 1.09929682680944;

  /** Solves BT.2020-2's equations for β. */
  static final double BETA = 0.018053968510807;

  private static final TransferCurve SRGB_CURVE =
      TransferCurve.gammaWithToe(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045);

  private static final Map<NamedSpace, ColourSpace> SPACES = spaces();

  private NamedNumbers() {}

  static ColourSpace space(NamedSpace name) {
    ColourSpace space = SPACES.get(name);
    if (space == null) {
      throw new IllegalArgumentException(name.key());
    }
    return space;
  }

  private static Map<NamedSpace, ColourSpace> spaces() {
    Map<NamedSpace, ColourSpace> spaces = new EnumMap<>(NamedSpace.class);
    for (NamedSpace name : NamedSpace.values()) {
      double[] white = name == NamedSpace.PROPHOTO_RGB ? White.d50() : White.d65();
      spaces.put(
          name, ColourSpace.named(name, fromPrimaries(primaries(name), white), white, curve(name)));
    }
    return spaces;
  }

  /** Chromaticities x, y of red, green and blue. */
  private static double[] primaries(NamedSpace name) {
    return switch (name) {
      case SRGB -> new double[] {0.64, 0.33, 0.30, 0.60, 0.15, 0.06};
      case DISPLAY_P3 -> new double[] {0.680, 0.320, 0.265, 0.690, 0.150, 0.060};
      case A98_RGB -> new double[] {0.64, 0.33, 0.21, 0.71, 0.15, 0.06};
      case PROPHOTO_RGB ->
          new double[] {0.734699, 0.265301, 0.159597, 0.840403, 0.036598, 0.000105};
      case REC2020 -> new double[] {0.708, 0.292, 0.170, 0.797, 0.131, 0.046};
    };
  }

  private static TransferCurve curve(NamedSpace name) {
    return switch (name) {
      case SRGB, DISPLAY_P3 -> SRGB_CURVE;
      case A98_RGB -> TransferCurve.gamma(563 / 256.0);
      case PROPHOTO_RGB -> TransferCurve.gammaWithToe(1.8, 1, 0, 1 / 16.0, 16 / 512.0);
      case REC2020 ->
          TransferCurve.gammaWithToe(1 / 0.45, 1 / ALPHA, (ALPHA - 1) / ALPHA, 1 / 4.5, 4.5 * BETA);
    };
  }

  /** Columns are the primaries, each scaled so that their sum is the white. */
  private static double[] fromPrimaries(double[] xy, double[] white) {
    double[] columns = new double[9];
    for (int channel = 0; channel < 3; channel++) {
      double x = xy[2 * channel];
      double y = xy[2 * channel + 1];
      columns[channel] = x;
      columns[3 + channel] = y;
      columns[6 + channel] = 1 - x - y;
    }
    double[] scale = Matrix3.apply(Matrix3.inverse(columns), white);
    return Matrix3.multiply(columns, Matrix3.diagonal(scale[0], scale[1], scale[2]));
  }
}
