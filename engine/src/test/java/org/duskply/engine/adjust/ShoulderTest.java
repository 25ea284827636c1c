package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.recipe.adjust.Shoulder;
import org.junit.jupiter.api.Test;

/** Light above white rolled off. */
class ShoulderTest extends AdjustKernelContract {
  @Override
  protected List<Case> cases() {
    return Stream.of(
            new Shoulder(0.6, 6),
            new Shoulder(0, 4),
            new Shoulder(0.95, 1000),
            new Shoulder(0.5, 1),
            new Shoulder(0.18, 1.5))
        .map(ShoulderTest::rolledOff)
        .toList();
  }

  private static Case rolledOff(Shoulder shoulder) {
    DoubleUnaryOperator curve = AdjustFormulas.shoulder(shoulder.begins(), shoulder.whiteAt());
    return new Case(
        shoulder.toString(),
        Working.kernel(shoulder),
        (r, g, b) -> AdjustFormulas.each(curve, r, g, b),
        // One rounding and the fit of Segments: 2⁻²⁴ + 2⁻²⁵ of the value.
        (in, want) -> 0x1p-23 * greatest(want) + 0x1p-33);
  }

  /**
   * Reinhard et al. 2002, equation 4, L(1 + L/w²)/(1 + L), worked by hand with w = 4: 1 gives
   * 17/32, 2 gives 3/4, 3 gives 57/64, 4 gives 1.
   */
  @Test
  void isTheEquationOfThePaper() {
    float[] v = {0, 1, 2, 3, 4, 5, 100};
    Working.kernel(new Shoulder(0, 4)).run(v, v.clone(), v.clone(), 0, v.length);
    Close.check("paper", v, new double[] {0, 17 / 32.0, 3 / 4.0, 57 / 64.0, 1, 1, 1}, 0x1p-23);
  }

  @Test
  void leavesAllBelowItsBeginning() {
    float[] v = {-1, -0.001f, 0, 1e-20f, 0.18f, 0.5999f};
    float[] out = v.clone();
    Working.kernel(new Shoulder(0.6, 6)).run(out, v.clone(), v.clone(), 0, v.length);
    Close.check("below", out, new double[] {-1, -0.001f, 0, 1e-20f, 0.18f, 0.5999f}, 0x1p-24);
  }

  /** No edge where it begins: the slope there is 1 on both sides. Never falling up to its white. */
  @Test
  void beginsWithoutAnEdgeAndNeverFalls() {
    int count = 30_000;
    float[] v = new float[count];
    for (int i = 0; i < count; i++) {
      v[i] = 0.55f + i * 0.00025f;
    }
    float[] out = v.clone();
    Working.kernel(new Shoulder(0.6, 6)).run(out, v.clone(), v.clone(), 0, count);
    for (int i = 1; i < count; i++) {
      float slope = (out[i] - out[i - 1]) / (v[i] - v[i - 1]);
      assertThat(out[i]).isGreaterThanOrEqualTo(out[i - 1]);
      // The second derivative is at most 2/(1 − begins)·(1 − 1/w²), 5 here; half a step of rounding
      // is 2⁻²⁵ of a value below 1, over a step of 0.00025.
      if (Math.abs(v[i] - 0.6f) < 0.001f) {
        Close.within("slope at " + v[i], slope, 1, 5 * 0.00125 + 0x1p-23 / 0.00025);
      }
    }
  }
}
