package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Sequence;
import org.duskply.engine.testing.reference.Srgb;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.junit.jupiter.api.Test;

/** Curves through points, on either axis, on what they name. */
class CurveTest extends AdjustKernelContract {
  private static final double[] SOFT = {0, 0, 0.25, 0.15, 0.5, 0.5, 0.75, 0.85, 1, 1};
  private static final double[] FLAT = {0, 0, 0.1, 0.05, 0.3, 0.05, 0.7, 0.9, 1, 1};
  private static final double[] RAISED = {0, 0.1, 0.5, 0.5, 1, 0.9};

  CurveTest() {
    super(Curve.class);
  }

  static Curve curve(Channel channel, Axis axis, double... points) {
    List<CurvePoint> list = new ArrayList<>();
    for (int i = 0; i < points.length; i += 2) {
      list.add(new CurvePoint(points[i], points[i + 1]));
    }
    return new Curve(list, channel, axis);
  }

  @Override
  List<Adjustment> cases() {
    return List.of(
        curve(Channel.RGB, Axis.ENCODED, SOFT),
        curve(Channel.RGB, Axis.ENCODED, FLAT),
        curve(Channel.RGB, Axis.LINEAR, FLAT),
        curve(Channel.LUMINANCE, Axis.ENCODED, SOFT),
        curve(Channel.LUMINANCE, Axis.ENCODED, 0, 0, 0.5, 0.42, 1, 0.95),
        curve(Channel.RED, Axis.ENCODED, RAISED),
        curve(Channel.GREEN, Axis.ENCODED, 0.1, 0, 0.9, 1),
        curve(Channel.BLUE, Axis.LINEAR, 0, 0, 0.4, 0.02, 0.5, 0.5, 0.6, 0.98, 1, 1));
  }

  @Override
  List<Adjustment> identities() {
    return List.of(
        curve(Channel.RGB, Axis.ENCODED, 0, 0, 1, 1),
        curve(Channel.LUMINANCE, Axis.LINEAR, 0.2, 0.2, 0.3, 0.3, 2, 2));
  }

  @Override
  double bound() {
    // As in ContrastTest, with slopes up to 2.4 in linear light on luminance.
    return 20 * 0x1p-24;
  }

  @Test
  void cornersOfManyPointsAreExact() {
    double[] points = new double[512];
    Sequence sequence = new Sequence(9);
    for (int i = 1; i < 256; i++) {
      points[2 * i] = i / 255d;
      points[2 * i + 1] = points[2 * i - 1] + sequence.next() / 128;
    }
    List<Adjustment> list = List.of(curve(Channel.RGB, Axis.ENCODED, points));
    for (int i = 0; i < 256; i++) {
      float x = (float) Srgb.linear(points[2 * i]);
      float[] made = adjusted(list, NamedSpace.SRGB, x, x, x);
      // x is rounded, and the steepest slope is 255/128 · 3 at most.
      Close.check(i, Srgb.encoded(made[0]), points[2 * i + 1], 4e-7);
    }
  }

  @Test
  void whatIsBrighterThanWhiteStaysBrighter() {
    List<Adjustment> list = List.of(curve(Channel.RGB, Axis.LINEAR, FLAT)); // arrives flat at 1
    float[] made = adjusted(list, NamedSpace.SRGB, 1, 1.5f, 65504);
    assertThat(made).containsExactly(1, 1.5f, 65504);
  }

  @Test
  void namedChannelsLeaveTheOthersTheirBits() {
    float[] in = {0.2f, 0.4f, 0.7f};
    Channel[] one = {Channel.RED, Channel.GREEN, Channel.BLUE};
    for (int p = 0; p < 3; p++) {
      List<Adjustment> list = List.of(curve(one[p], Axis.ENCODED, SOFT));
      float[] made = adjusted(list, NamedSpace.SRGB, in);
      float[] all = adjusted(List.of(curve(Channel.RGB, Axis.ENCODED, SOFT)), NamedSpace.SRGB, in);
      for (int q = 0; q < 3; q++) {
        assertThat(made[q]).isEqualTo(q == p ? all[q] : in[q]);
      }
    }
  }

  @Test
  void pointsThatOnlyHostilityWritesStillGiveNumbers() {
    for (double least : new double[] {1e-300, Double.MIN_VALUE, 1e-12}) {
      List<Adjustment> list =
          List.of(
              curve(Channel.RGB, Axis.ENCODED, 0, 0, least, 100),
              curve(Channel.RGB, Axis.LINEAR, 0, 0, least, 50, 100, 100));
      for (float v : adjusted(list, NamedSpace.SRGB, 0, -1, 65504)) {
        assertThat(v).isFinite();
      }
    }
  }

  @Test
  void luminanceOfABlackRaisedCurveIsSoftInTheDark() {
    List<Adjustment> list = List.of(curve(Channel.LUMINANCE, Axis.ENCODED, RAISED));
    float last = Float.NaN;
    for (int i = -64; i <= 64; i++) {
      float x = i * 0x1p-14f; // from −4ε to 4ε, ε = 2⁻¹⁰: no step where the hue fades
      float[] made = adjusted(list, NamedSpace.SRGB, x * 1.2f, x, x * 0.8f);
      if (i > -64) {
        Close.check(i, made[0], last, 0.002);
      }
      last = made[0];
    }
  }
}
