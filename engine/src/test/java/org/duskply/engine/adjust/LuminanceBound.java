package org.duskply.engine.adjust;

import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.AdjustKernelContract.Bound;
import org.duskply.engine.testing.reference.AdjustFormulas;

/**
 * The bound of a curve set on luminance in float. With u = 2⁻²⁴: Y is off by 4u of the sum of its
 * parts; so Y' by that times the steepest slope near, and 4u of its own; the gain by as much over
 * max(Y, 2⁻¹⁰); the result is two products with the gain and a sum. The printed weights add 1e-9.
 */
final class LuminanceBound {
  private static final double UNIT = 0x1p-24;

  private LuminanceBound() {}

  static Bound of(DoubleUnaryOperator curve) {
    return (in, want) -> {
      double[] w = Working.WEIGHTS;
      double y = AdjustFormulas.luminance(w, in[0], in[1], in[2]);
      double parts = Math.abs(w[0] * in[0]) + Math.abs(w[1] * in[1]) + Math.abs(w[2] * in[2]);
      double offY = 4 * UNIT * parts + 1e-9 * parts;
      double wanted = curve.applyAsDouble(y);
      double offWanted =
          Math.max(
                  Math.abs(curve.applyAsDouble(y + offY) - wanted),
                  Math.abs(curve.applyAsDouble(y - offY) - wanted))
              + 4 * UNIT * Math.abs(wanted)
              + 0x1p-33;
      double base = Math.max(y, 0x1p-10);
      double gain = Math.abs(wanted) / base;
      double offGain = offWanted / base + gain * (offY / base + 2 * UNIT);
      double reach =
          Math.max(
              Math.abs(y), Math.max(Math.abs(in[0]), Math.max(Math.abs(in[1]), Math.abs(in[2]))));
      return 2 * reach * (offGain + 2 * UNIT * gain) + offY * gain + offWanted;
    };
  }
}
