package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.junit.jupiter.api.Test;

/** Contrast in stops about a pivot. */
class ContrastTest extends AdjustKernelContract {
  @Override
  protected List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (double strength : new double[] {0.15, 1, 4, -0.3, -0.9}) {
      cases.add(each(strength, 0.18));
      cases.add(onLuminance(strength, 0.18));
    }
    cases.add(each(0.5, 0.003));
    cases.add(each(1, 0.0001));
    for (Channel one : List.of(Channel.RED, Channel.GREEN, Channel.BLUE)) {
      cases.add(alone(one));
    }
    return cases;
  }

  private static Case alone(Channel channel) {
    DoubleUnaryOperator curve = AdjustFormulas.contrast(0.3, 0.18);
    return new Case(
        channel + " alone",
        Working.kernel(new Contrast(0.3, 0.18, channel)),
        (r, g, b) -> AdjustFormulas.alone(curve, channel, r, g, b),
        (in, want) -> (2 * 1.3 + 3.5) * 0x1p-24 * greatest(want) + 0.18 * 0x1p-33);
  }

  private static Case each(double strength, double pivot) {
    DoubleUnaryOperator curve = AdjustFormulas.contrast(strength, pivot);
    // x/pivot: two roundings, raised by the slope 1 + strength; the fit, 2⁻²⁵ and one rounding; the
    // pivot and the product, two more. With u = 2⁻²⁴: (2(1 + strength) + 3.5)·u.
    double tolerance = (2 * (1 + strength) + 3.5) * 0x1p-24;
    return new Case(
        strength + " about " + pivot,
        Working.kernel(new Contrast(strength, pivot, Channel.RGB)),
        (r, g, b) -> AdjustFormulas.each(curve, r, g, b),
        (in, want) -> tolerance * greatest(want) + pivot * 0x1p-33);
  }

  private static Case onLuminance(double strength, double pivot) {
    DoubleUnaryOperator curve = AdjustFormulas.contrast(strength, pivot);
    LuminanceBoundOfContrast bound = new LuminanceBoundOfContrast(strength, curve);
    return new Case(
        strength + " on luminance",
        Working.kernel(new Contrast(strength, pivot, Channel.LUMINANCE)),
        (r, g, b) -> AdjustFormulas.onLuminance(curve, Working.WEIGHTS, r, g, b),
        bound);
  }

  /** The bound of a curve on luminance, with what the pivot's roundings add to Y'. */
  private record LuminanceBoundOfContrast(double strength, DoubleUnaryOperator curve)
      implements Bound {
    @Override
    public double of(double[] in, double[] want) {
      return (1 + 2 * (1 + strength)) * LuminanceBound.of(curve).of(in, want);
    }
  }

  /** The pivot stays; a stop above it comes out (1 + strength) stops above, as far as 8 below. */
  @Test
  void steepensStops() {
    float[] v = new float[13];
    double[] want = new double[13];
    for (int stop = -8; stop <= 4; stop++) {
      v[stop + 8] = (float) (0.18 * StrictMath.pow(2, stop));
      want[stop + 8] = 0.18 * StrictMath.pow(2, 1.25 * stop);
    }
    Working.kernel(new Contrast(0.25, 0.18, Channel.RGB)).run(v, v.clone(), v.clone(), 0, 13);
    Close.check("stops", v, want, 6 * 0x1p-24);
  }

  @Test
  void nineStopsBelowItIsStraight() {
    float[] v = {(float) (0.18 / 512), 0f, (float) (-0.18 / 512)};
    double tenStops = 0.18 / 512 * StrictMath.pow(2, -2);
    Working.kernel(new Contrast(0.25, 0.18, Channel.RGB)).run(v, v.clone(), v.clone(), 0, 3);
    Close.check("straight", v, new double[] {tenStops, 0, -tenStops}, 1e-11);
  }
}
