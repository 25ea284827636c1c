package org.duskply.engine.adjust;

import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Contrast;

/**
 * Contrast about a pivot {@code p} in linear light, a straight line of slope {@code 1 + strength}
 * in stops, down to eight stops below the pivot:
 *
 * <pre>
 *   sign(x)·p·(|x|/p)^(1 + strength)    for |x| ≥ 2⁻⁸·p
 *   x·2^(−8·strength)                   nearer to 0, where it joins on
 * </pre>
 */
final class ContrastTone {
  private static final double REACH = 0x1p-8;

  private ContrastTone() {}

  static boolean identity(Contrast contrast) {
    return contrast.strength() == 0;
  }

  static Tone of(Contrast contrast) {
    double pivot = contrast.pivot();
    double power = 1 + contrast.strength();
    double deep = REACH * pivot;
    double slope = StrictMath.pow(REACH, contrast.strength());
    return new Tone(
        Axis.LINEAR,
        x -> {
          double size = Math.abs(x);
          double y = size < deep ? size * slope : pivot * StrictMath.pow(size / pivot, power);
          return Math.copySign(y, x);
        },
        -deep,
        deep);
  }
}
