package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Lcg;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HermiteCurve;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.adjust.Shoulder;
import org.duskply.recipe.shape.PerChannel;
import org.duskply.recipe.shape.Shape;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The table of adjustments, and lists of them. */
class AdjustmentsTest {
  private static final List<CurvePoint> POINTS =
      List.of(new CurvePoint(0, 0.02), new CurvePoint(0.4, 0.46), new CurvePoint(0.9, 0.95));
  private static final List<CurvePoint> RISING =
      List.of(new CurvePoint(0, 0), new CurvePoint(0.4, 0.46), new CurvePoint(0.9, 0.95));
  private static final Curve LIFT = new Curve(POINTS, Channel.RGB, Axis.ENCODED);
  private static final Curve LIFT_LUMINANCE = new Curve(POINTS, Channel.LUMINANCE, Axis.ENCODED);
  private static final Curve LIFT_LINEAR = new Curve(POINTS, Channel.BLUE, Axis.LINEAR);

  private static final PerChannel ONE = PerChannel.all(1);
  private static final PerChannel NOTHING = PerChannel.all(0);
  private static final Cdl GRADE =
      new Cdl(
          new PerChannel(1.05, 1, 0.95),
          PerChannel.all(0.01),
          new PerChannel(0.9, 1.1, 1),
          0.9,
          Axis.ENCODED,
          false);

  /** One of each kind that changes the picture, and one that does not, where there is such. */
  private static final Map<Class<?>, List<Adjustment>> CHANGING_AND_NOT =
      Map.of(
          Exposure.class, List.of(new Exposure(0.35), new Exposure(0)),
          Curve.class, List.of(LIFT, diagonal()),
          Power.class, List.of(new Power(0.9), new Power(1)),
          Contrast.class,
              List.of(
                  new Contrast(0.15, 0.18, Channel.LUMINANCE),
                  new Contrast(0, 0.18, Channel.LUMINANCE)),
          Saturation.class, List.of(new Saturation(1.1), new Saturation(1)),
          Gel.class, List.of(new Gel(42.0, null, null, 0), new Gel(null, 3000.0, 3000.0, 0)),
          Ends.class, List.of(new Ends(0.02, 0.97), new Ends(0, 1)),
          Hue.class,
              List.of(new Hue(-6, 1.15, 0, 260.0, 70.0, 20.0), new Hue(0, 1, 0, 260.0, 70.0, 20.0)),
          Cdl.class, List.of(GRADE, new Cdl(ONE, NOTHING, ONE, 1, Axis.LINEAR, false)),
          Shoulder.class, List.of(new Shoulder(0.6, 6)));

  private static Curve diagonal() {
    return new Curve(
        List.of(new CurvePoint(0, 0), new CurvePoint(0.3, 0.3), new CurvePoint(0.8, 0.8)),
        Channel.RGB,
        Axis.ENCODED);
  }

  private static float[][] noise() {
    Lcg noise = new Lcg(42);
    return new float[][] {
      noise.samples(4099, -0.05, 2), noise.samples(4099, -0.05, 2), noise.samples(4099, -0.05, 2)
    };
  }

  private static float[][] done(Adjustment... adjustments) {
    float[][] p = noise();
    Working.kernel(adjustments).run(p[0], p[1], p[2], 0, p[0].length);
    return p;
  }

  @Test
  void everyKindHasAKernelAnIdentityAndAContract() throws ClassNotFoundException {
    for (Class<?> kind : Adjustment.class.getPermittedSubclasses()) {
      assertThat(CHANGING_AND_NOT).containsKey(kind);
      List<Adjustment> both = CHANGING_AND_NOT.getOrDefault(kind, List.of());
      assertThat(Shape.isIdentityOf(both.get(0))).isFalse();
      assertThat(Bits.sha256(done(both.get(0)))).isNotEqualTo(Bits.sha256(noise()));
      for (Adjustment idle : both.subList(1, both.size())) {
        assertThat(Shape.isIdentityOf(idle)).isTrue();
        assertThat(done(idle)).isDeepEqualTo(noise());
      }
      Class<?> contract =
          Class.forName(getClass().getPackageName() + "." + kind.getSimpleName() + "Test");
      assertThat(contract).isAssignableTo(AdjustKernelContract.class);
    }
  }

  @Test
  void anEmptyListChangesNothing() {
    assertThat(done()).isDeepEqualTo(noise());
  }

  @Test
  void aListIsDoneInOrder() {
    Adjustment[] list = {
      new Exposure(0.5), LIFT_LUMINANCE, new Saturation(1.2), new Contrast(0.2, 0.18, Channel.RGB)
    };
    float[][] oneByOne = noise();
    for (Adjustment adjustment : list) {
      Working.kernel(adjustment).run(oneByOne[0], oneByOne[1], oneByOne[2], 0, oneByOne[0].length);
    }
    assertThat(done(list)).isDeepEqualTo(oneByOne);
    Collections.reverse(java.util.Arrays.asList(list));
    assertThat(Bits.sha256(done(list))).isNotEqualTo(Bits.sha256(oneByOne));
  }

  /** Three neighbours on the encoded axis come to one curve with a single rounding. */
  @Test
  void neighboursOnTheEncodedAxisShareOneWayThereAndBack() {
    Curve green = new Curve(POINTS, Channel.GREEN, Axis.ENCODED);
    Curve rise = new Curve(RISING, Channel.RGB, Axis.ENCODED);
    float[][] got = done(rise, new Power(0.8), green);
    float[][] in = noise();
    DoubleUnaryOperator lift =
        v -> HermiteCurve.at(new double[] {0, 0.4, 0.9}, new double[] {0.02, 0.46, 0.95}, v);
    DoubleUnaryOperator risen =
        v -> HermiteCurve.at(new double[] {0, 0.4, 0.9}, new double[] {0, 0.46, 0.95}, v);
    DoubleUnaryOperator power = v -> Math.signum(v) * StrictMath.pow(Math.abs(v), 0.8);
    for (int p = 0; p < 3; p++) {
      DoubleUnaryOperator both = risen.andThen(power);
      DoubleUnaryOperator all = p == 1 ? both.andThen(lift) : both;
      for (int i = 0; i < in[p].length; i++) {
        double want = EncodedAxis.decode(all.applyAsDouble(EncodedAxis.encode(in[p][i])));
        // The fit of Segments and one rounding.
        Close.within("at " + in[p][i], got[p][i], want, 0x1p-23 * Math.abs(want) + 0x1p-33);
      }
    }
  }

  @Test
  void anotherAxisOrKindBetweenThemParts() {
    float[][] apart = done(LIFT);
    Working.kernel(LIFT_LINEAR).run(apart[0], apart[1], apart[2], 0, apart[0].length);
    assertThat(done(LIFT, LIFT_LINEAR)).isDeepEqualTo(apart);
  }

  @Test
  void neutralChangeKeepsLuminanceExactBelowBlackToo() {
    float[][] p = {{0.0001f, -0.01f, 0.3f}, {0f, 0.002f, 0.1f}, {0.0003f, -0.02f, 0.02f}};
    double[] before = new double[3];
    for (int i = 0; i < 3; i++) {
      before[i] = luminance(p, i);
    }
    Working.kernel(new Contrast(-0.3, 0.18, Channel.LUMINANCE)).run(p[0], p[1], p[2], 0, 3);
    for (int i = 0; i < 3; i++) {
      double y = before[i];
      double straight = 0.18 / 256;
      double want =
          Math.abs(y) < straight
              ? y * StrictMath.pow(2, 8 * 0.3)
              : Math.signum(y) * 0.18 * StrictMath.pow(Math.abs(y) / 0.18, 0.7);
      Close.within("luminance of pixel " + i, luminance(p, i), want, 1e-6 * Math.abs(want) + 1e-9);
    }
  }

  @Test
  void aLuminanceBelowBlackIsNeutral() {
    float[][] p = {{-1, -0.02f}, {0.1f, 0.001f}, {0.2f, 0.002f}};
    Working.kernel(new Contrast(0.4, 0.18, Channel.LUMINANCE)).run(p[0], p[1], p[2], 0, 2);
    for (int i = 0; i < 2; i++) {
      assertThat(p[0][i]).isNegative().isEqualTo(p[1][i]).isEqualTo(p[2][i]);
    }
  }

  /**
   * What only hostility writes: points nowhere apart, powers of powers, a flat curve after them.
   */
  @Test
  void theSteepestListsGiveFiniteNumbers() {
    for (double least : new double[] {1e-300, 1e-310, Double.MIN_VALUE}) {
      Curve jump =
          new Curve(
              List.of(new CurvePoint(0, 0), new CurvePoint(least, 50), new CurvePoint(100, 60)),
              Channel.RGB,
              Axis.LINEAR);
      Curve black =
          new Curve(
              List.of(new CurvePoint(0, 0), new CurvePoint(least, 0)), Channel.RGB, Axis.ENCODED);
      float[] v = {0, -0f, -1, 1, 65504, Float.MIN_VALUE};
      Working.kernel(jump).run(v, v.clone(), v.clone(), 0, v.length);
      Working.kernel(new Power(20), new Power(20), new Power(20), black)
          .run(v, v.clone(), v.clone(), 0, v.length);
      for (float made : v) {
        assertThat(made).isFinite();
      }
    }
  }

  /** A list as long as a recipe may hold must not take longer than its length. */
  @Test
  void aRunBeyondTheLongestGoesOnInAnotherKernel() {
    Adjustment[] list = new Adjustment[2 * Adjustments.LONGEST_RUN + 1];
    for (int i = 0; i < list.length; i++) {
      list[i] = i == list.length - 1 ? LIFT : new Power(i % 2 == 0 ? 0.8 : 1.25);
    }
    float[][] got = done(list);
    float[][] want = done(LIFT);
    for (int p = 0; p < 3; p++) {
      for (int i = 0; i < got[p].length; i++) {
        // Two more roundings than once, which no slope of this curve more than triples.
        double room = 8 * 0x1p-24 * Math.max(Math.abs(want[p][i]), 0x1p-9);
        Close.within("sample " + i, got[p][i], want[p][i], room);
      }
    }
  }

  private static double luminance(float[][] p, int i) {
    double[] w = Working.WEIGHTS;
    return w[0] * p[0][i] + w[1] * p[1][i] + w[2] * p[2][i];
  }

  /** Bits of each kernel on noise: the same on every machine, Java, and interpreted. */
  @Test
  @Tag("bits")
  void bitsArePinned() {
    assertThat(Bits.sha256(done(new Exposure(0.35)))).startsWith("9c0592fbb81203fd");
    assertThat(Bits.sha256(done(LIFT))).startsWith("e39535b86b82b6e7");
    assertThat(Bits.sha256(done(LIFT_LUMINANCE))).startsWith("3cfe01671c5bfc72");
    assertThat(Bits.sha256(done(LIFT_LINEAR))).startsWith("8ad27beef172815e");
    assertThat(Bits.sha256(done(new Power(0.9)))).startsWith("e8751f48722b77f0");
    assertThat(Bits.sha256(done(new Contrast(0.15, 0.18, Channel.RGB))))
        .startsWith("91f3c2a4177a5b15");
    assertThat(Bits.sha256(done(new Saturation(1.1)))).startsWith("1afa24b198293455");
    assertThat(Bits.sha256(done(new Ends(0.02, 0.97)))).startsWith("f1ddf79385c68131");
    assertThat(Bits.sha256(done(new Gel(42.0, null, null, 3)))).startsWith("8943a7f31351a59f");
    assertThat(Bits.sha256(done(new Hue(-6, 1.15, 0.01, null, null, 0))))
        .startsWith("caf664cd98ac2583");
    assertThat(Bits.sha256(done(new Hue(-6, 1.15, 0, 260.0, 70.0, 20.0))))
        .startsWith("ed0cc89ce2809228");
    assertThat(Bits.sha256(done(GRADE))).startsWith("fb90d65330801645");
    assertThat(Bits.sha256(done(new Shoulder(0.6, 6)))).startsWith("b176bad3682c2dce");
  }
}
