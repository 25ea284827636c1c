package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Black and white points. */
class EndsTest extends AdjustKernelContract {
  @Override
  protected List<Case> cases() {
    return Stream.of(
            new Ends(0.02, 0.97),
            new Ends(0, 0.8),
            new Ends(0.1, 1),
            new Ends(0, 4),
            new Ends(0.5, 0.55),
            new Ends(0.95, 1))
        .map(EndsTest::drawnIn)
        .toList();
  }

  private static Case drawnIn(Ends ends) {
    DoubleUnaryOperator curve =
        AdjustFormulas.onEncodedAxis(AdjustFormulas.ends(ends.black(), ends.white()));
    return new Case(
        ends.toString(),
        Working.kernel(ends),
        (r, g, b) -> AdjustFormulas.each(curve, r, g, b),
        (in, want) -> bound(ends, greatest(want)));
  }

  /**
   * One rounding and the fit of Segments: 2⁻²⁴ + 2⁻²⁵ of the value. Where the whole axis is made of
   * a twentieth of it, all between black and the knee lies within a few of the finest segments, and
   * a cubic may be off there by more: held to a five-hundredth of a 16-bit code at the knee.
   */
  private static double bound(Ends ends, double want) {
    boolean narrow = ends.white() - ends.black() < 0.1;
    return 0x1p-23 * want + (narrow ? 0.002 / 65535 / 12.92 : 0x1p-33);
  }

  /**
   * Levels with a middle and output ends, as everybody computes them: common practice, no source.
   */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0, 1, 2.2, 0, 1, 0.729740053",
    "0.5, 0.1, 0.9, 1, 0, 1, 0.5",
    "0.3, 0.05, 0.8, 1.2, 0.02, 0.98, 0.404299826",
    "0.02, 0.05, 0.8, 1.2, 0.02, 0.98, 0.02",
    "1.5, 0, 1, 1, 0, 1, 1.5",
    "0.9, 0, 0.8, 1, 0, 1, 1.125"
  })
  void areTheLevelsOfTheTrade(
      double v, double black, double white, double middle, double from, double to, double want) {
    Adjustment[] levels = {
      new Ends(black, white),
      new Power(1 / middle),
      new Curve(List.of(new CurvePoint(0, from), new CurvePoint(1, to)), Channel.RGB, Axis.ENCODED)
    };
    float[] x = {(float) EncodedAxis.decode(v)};
    Working.kernel(levels).run(x, x.clone(), x.clone(), 0, 1);
    // A hundredth of a 16-bit code.
    Close.within("level", EncodedAxis.encode(x[0]), want, 1.5e-7);
  }

  @Test
  void blackIsExactlyBlackAndNothingBelowIt() {
    float[] v = {(float) EncodedAxis.decode(0.0199), 0f, -0f, -1f, Float.MIN_VALUE, 1e-4f};
    Working.kernel(new Ends(0.02, 0.97)).run(v, v.clone(), v.clone(), 0, v.length);
    for (float made : v) {
      assertThat(made).isZero();
    }
  }

  @Test
  void orderAboveWhiteSurvives() {
    float[] v = {1, 2, 8};
    Working.kernel(new Ends(0.02, 0.9)).run(v, v.clone(), v.clone(), 0, 3);
    assertThat(v[0]).isGreaterThan(1);
    assertThat(v[1]).isGreaterThan(v[0]);
    assertThat(v[2]).isGreaterThan(v[1]);
  }

  /**
   * A root is steepest where its curve leaves 0, and the ends have moved that into the middle of
   * the shadows: there the run is looked up in two tables. Every float about the black point.
   */
  @Test
  void aRootAfterTheEndsIsAsExactAsElsewhere() {
    DoubleUnaryOperator curve = AdjustFormulas.ends(0.1, 1).andThen(AdjustFormulas.power(0.5));
    int middle = Float.floatToIntBits((float) EncodedAxis.decode(0.1));
    int count = 100_000;
    float[] v = new float[count];
    for (int i = 0; i < count; i++) {
      v[i] = Float.intBitsToFloat(middle - count / 10 + i);
    }
    float[] out = v.clone();
    Working.kernel(new Ends(0.1, 1), new Power(0.5)).run(out, v.clone(), v.clone(), 0, count);
    for (int i = 0; i < count; i++) {
      double t = AdjustFormulas.ends(0.1, 1).applyAsDouble(EncodedAxis.encode(v[i]));
      double want = curve.applyAsDouble(EncodedAxis.encode(v[i]));
      // What the first table may be off, 2⁻³⁴ and 2⁻²⁴ of t, by the root's slope, and a rounding.
      double off = 0x1p-33 + 0x1p-24 * t;
      double slope = Math.sqrt(t + off) - Math.sqrt(Math.max(0, t - off));
      Close.within("at " + v[i], EncodedAxis.encode(out[i]), want, slope + 0x1p-23);
      assertThat(i == 0 || out[i] >= out[i - 1]).isTrue();
    }
  }
}
