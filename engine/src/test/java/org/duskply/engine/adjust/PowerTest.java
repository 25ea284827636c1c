package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.Srgb;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A power of what the screen shows. */
class PowerTest extends AdjustKernelContract {
  PowerTest() {
    super(Power.class);
  }

  @Override
  List<Adjustment> cases() {
    return List.of(new Power(0.45), new Power(0.9), new Power(1.2), new Power(3), new Power(20));
  }

  @Override
  List<Adjustment> identities() {
    return List.of(new Power(1));
  }

  @Override
  double bound() {
    return 0x1p-24 + 0x1p-25; // the curve's own error and its one rounding
  }

  /**
   * Levels with only a middle slider, 1/γ: common practice, no source. 0.5 with γ 2.2 is
   * 0.729740053, worked in Python.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.45454545454545453, 0.729740053", "0, 2, 0", "1, 2, 1", "0.25, 0.5, 0.5"})
  void onTheEncodedAxis(double v, double power, double wanted) {
    float x = (float) Srgb.linear(v);
    float[] made = adjusted(List.of(new Power(power)), NamedSpace.SRGB, x, -x, 0.1f);
    Close.check("plus", Srgb.encoded(made[0]), wanted, 2e-7);
    Close.check("minus", Srgb.encoded(made[1]), -wanted, 2e-7);
  }

  @Test
  void theSteepestLiftIsRightDownToTheLeastNormalFloat() {
    Power steep = new Power(0.05);
    for (float x : new float[] {Float.MIN_NORMAL, 1e-30f, 1e-20f, 1e-10f, 1e-5f, 0.1f, 1, 65504}) {
      float[][] one = {{x}, {-x}, {0}};
      follows(List.of(steep), NamedSpace.SRGB, one);
    }
  }
}
