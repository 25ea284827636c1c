package org.duskply.engine.adjust;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.adjust.Power;
import org.junit.jupiter.api.Test;

/** Powers of the encoded value. */
class PowerTest extends AdjustKernelContract {
  @Override
  protected List<Case> cases() {
    return Stream.of(0.05, 0.5, 0.9, 1.1, 2.0, 20.0).map(PowerTest::powered).toList();
  }

  private static Case powered(double p) {
    DoubleUnaryOperator endless = AdjustFormulas.onEncodedAxis(AdjustFormulas.power(p));
    // A power of 20 of what is far above white is more than a float can hold, and is held there.
    DoubleUnaryOperator curve = x -> Math.min(Float.MAX_VALUE, endless.applyAsDouble(x));
    // One rounding and the fit of Segments: 2⁻²⁴ + 2⁻²⁵ of the value. The least octave of floats is
    // one cubic: a power of 0.05 of a denormal is off by less than 0.001.
    return new Case(
        "power " + p,
        Working.kernel(new Power(p)),
        (r, g, b) -> AdjustFormulas.each(curve, r, g, b),
        (in, want) ->
            denormal(in) ? 0.001 + 0x1p-23 * greatest(want) : 0x1p-23 * greatest(want) + 0x1p-33);
  }

  private static boolean denormal(double[] in) {
    for (double v : in) {
      if (v != 0 && Math.abs(v) < Float.MIN_NORMAL) {
        return true;
      }
    }
    return false;
  }

  /** On the encoded axis black and white stay, and half squared is a quarter. */
  @Test
  void squareOfHalfIsAQuarterOnScreen() {
    float[] v = {0f, 1f, (float) EncodedAxis.decode(0.5), -(float) EncodedAxis.decode(0.5)};
    Working.kernel(new Power(2)).run(v, v.clone(), v.clone(), 0, 4);
    Close.check("power", v, new double[] {0, 1, 0.0508760815, -0.0508760815}, 1e-7);
  }
}
