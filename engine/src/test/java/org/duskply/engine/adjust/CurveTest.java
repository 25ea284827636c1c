package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HermiteCurve;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.junit.jupiter.api.Test;

/** Curves on both axes, on each channel and on luminance. */
class CurveTest extends AdjustKernelContract {
  private static final double[][] GENTLE = {{0, 0.25, 0.5, 0.75, 1}, {0, 0.15, 0.5, 0.85, 1}};
  private static final double[][] STEP = {{0, 0.4, 0.5, 0.6, 1}, {0, 0.02, 0.5, 0.98, 1}};
  private static final double[][] LIFTED = {{0.1, 0.3, 0.9}, {0.05, 0.4, 0.8}};

  static Curve curve(double[][] points, Channel channel, Axis axis) {
    List<CurvePoint> list = new ArrayList<>();
    for (int i = 0; i < points[0].length; i++) {
      list.add(new CurvePoint(points[0][i], points[1][i]));
    }
    return new Curve(list, channel, axis);
  }

  private static DoubleUnaryOperator linear(double[][] points, Axis axis) {
    DoubleUnaryOperator curve = v -> HermiteCurve.at(points[0], points[1], v);
    return axis == Axis.LINEAR ? curve : AdjustFormulas.onEncodedAxis(curve);
  }

  @Override
  protected List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (Axis axis : Axis.values()) {
      for (double[][] points : List.of(GENTLE, STEP, LIFTED)) {
        cases.add(each(points, axis));
        cases.add(onLuminance(points, axis));
      }
    }
    for (Channel one : List.of(Channel.RED, Channel.GREEN, Channel.BLUE)) {
      for (Axis axis : Axis.values()) {
        cases.add(alone(one, axis));
      }
    }
    return cases;
  }

  private static Case each(double[][] points, Axis axis) {
    DoubleUnaryOperator curve = linear(points, axis);
    return new Case(
        axis + " rgb " + points[1][1],
        Working.kernel(curve(points, Channel.RGB, axis)),
        (r, g, b) -> AdjustFormulas.each(curve, r, g, b),
        // One rounding and the fit of Segments, 2⁻²⁴ + 2⁻²⁵ of the value.
        (in, want) -> 0x1p-23 * greatest(want) + 0x1p-33);
  }

  private static Case onLuminance(double[][] points, Axis axis) {
    DoubleUnaryOperator curve = linear(points, axis);
    return new Case(
        axis + " luminance " + points[1][1],
        Working.kernel(curve(points, Channel.LUMINANCE, axis)),
        (r, g, b) -> AdjustFormulas.onLuminance(curve, Working.WEIGHTS, r, g, b),
        LuminanceBound.of(curve));
  }

  private static Case alone(Channel channel, Axis axis) {
    DoubleUnaryOperator curve = linear(GENTLE, axis);
    return new Case(
        axis + " " + channel + " alone",
        Working.kernel(curve(GENTLE, channel, axis)),
        (r, g, b) -> AdjustFormulas.alone(curve, channel, r, g, b),
        (in, want) -> 0x1p-23 * greatest(want) + 0x1p-33);
  }

  /** What a curve of one channel does not touch keeps its bits. */
  @Test
  void theOtherChannelsKeepTheirBits() {
    float[][] p = {{0.1f, -1e-9f}, {0.2f, -0f}, {0.3f, 1e-40f}};
    for (Axis axis : Axis.values()) {
      float[][] out = {p[0].clone(), p[1].clone(), p[2].clone()};
      Working.kernel(curve(GENTLE, Channel.GREEN, axis)).run(out[0], out[1], out[2], 0, 2);
      assertThat(Bits.sha256(out[0], out[2])).isEqualTo(Bits.sha256(p[0], p[2]));
      assertThat(out[1][0]).isNotEqualTo(p[1][0]);
    }
  }

  /** What the photographer reads off his screen: the curve's own points, in encoded values. */
  @Test
  void passesThroughItsPointsOnScreen() {
    for (int i = 0; i < GENTLE[0].length; i++) {
      float[] v = {(float) EncodedAxis.decode(GENTLE[0][i])};
      Working.kernel(curve(GENTLE, Channel.RED, Axis.ENCODED))
          .run(v, new float[1], new float[1], 0, 1);
      // A hundredth of a 16-bit code: 1.5e-7.
      Close.within("point " + i, EncodedAxis.encode(v[0]), GENTLE[1][i], 1.5e-7);
    }
  }

  /** Where a curve arrives flat a cubic is most easily made to turn back. */
  @Test
  void flatEndsAreAsCloseAsTheRest() {
    double[][] points = {{0, 0.1, 0.3, 0.7, 1}, {0, 0.05, 0.05, 0.9, 1}};
    DoubleUnaryOperator want = linear(points, Axis.ENCODED);
    int from = Float.floatToIntBits(0x1p-12f);
    int count = (Float.floatToIntBits(1.25f) - from) / 997;
    float[] v = new float[count];
    for (int i = 0; i < count; i++) {
      v[i] = Float.intBitsToFloat(from + 997 * i);
    }
    float[] out = v.clone();
    Working.kernel(curve(points, Channel.RED, Axis.ENCODED))
        .run(out, v.clone(), v.clone(), 0, count);
    for (int i = 0; i < count; i++) {
      double exact = EncodedAxis.encode(want.applyAsDouble(v[i]));
      Close.within("at " + v[i], EncodedAxis.encode(out[i]), exact, 0.005 / 65535);
      assertThat(i == 0 || out[i] >= out[i - 1]).isTrue();
    }
  }

  @Test
  void everyFloatAboutACornerFollowsTheCurve() {
    // The last point is the one corner: a slope of 0.2 turns into one of 0.9.
    double[][] points = {{0, 0.5, 0.9}, {0, 0.75, 0.81}};
    DoubleUnaryOperator want = linear(points, Axis.ENCODED);
    int middle = Float.floatToIntBits((float) EncodedAxis.decode(0.9));
    int count = 200_000;
    float[] v = new float[count];
    for (int i = 0; i < count; i++) {
      v[i] = Float.intBitsToFloat(middle - count / 2 + i);
    }
    float[] out = v.clone();
    Working.kernel(curve(points, Channel.RED, Axis.ENCODED))
        .run(out, v.clone(), v.clone(), 0, count);
    for (int i = 0; i < count; i++) {
      Close.within("at " + v[i], out[i], want.applyAsDouble(v[i]), 0x1p-23);
      assertThat(i == 0 || out[i] >= out[i - 1]).isTrue();
    }
  }
}
