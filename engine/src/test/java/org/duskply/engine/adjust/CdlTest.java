package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.shape.PerChannel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Color decision lists. */
class CdlTest extends AdjustKernelContract {
  private static final PerChannel ONE = PerChannel.all(1);
  private static final PerChannel NOTHING = PerChannel.all(0);
  private static final double UNIT = 0x1p-24;

  @Override
  protected List<Case> cases() {
    PerChannel slope = new PerChannel(1.2, 1, 0.8);
    PerChannel offset = new PerChannel(0.02, -0.03, 0.05);
    PerChannel power = new PerChannel(0.9, 1.1, 1);
    List<Case> cases = new ArrayList<>();
    for (Axis axis : Axis.values()) {
      for (boolean clamp : new boolean[] {false, true}) {
        for (double saturation : new double[] {1, 0, 1.4}) {
          cases.add(graded(new Cdl(slope, offset, power, saturation, axis, clamp)));
        }
        cases.add(graded(new Cdl(PerChannel.all(0.5), NOTHING, PerChannel.all(2), 1, axis, clamp)));
      }
    }
    cases.add(graded(new Cdl(NOTHING, PerChannel.all(-0.5), ONE, 0.5, Axis.ENCODED, true)));
    cases.add(graded(new Cdl(PerChannel.all(100), offset, ONE, 10, Axis.LINEAR, false)));
    return cases;
  }

  private static Case graded(Cdl cdl) {
    return new Case(
        cdl.toString(),
        Working.kernel(cdl),
        (r, g, b) -> toLight(cdl, graded(cdl, onAxis(cdl, r, g, b))),
        (in, want) -> bound(cdl, in, want));
  }

  private static double[] onAxis(Cdl cdl, double... x) {
    boolean linear = cdl.axis() == Axis.LINEAR;
    return linear ? x : AdjustFormulas.each(EncodedAxis::encode, x[0], x[1], x[2]);
  }

  private static double[] toLight(Cdl cdl, double[] v) {
    boolean linear = cdl.axis() == Axis.LINEAR;
    return linear ? v : AdjustFormulas.each(EncodedAxis::decode, v[0], v[1], v[2]);
  }

  private static DoubleUnaryOperator channel(Cdl cdl, int i) {
    return AdjustFormulas.slopeOffsetPower(
        cdl.slope().at(i), cdl.offset().at(i), cdl.power().at(i), cdl.clamp());
  }

  private static double[] alone(Cdl cdl, double[] v) {
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      out[i] = channel(cdl, i).applyAsDouble(v[i]);
    }
    return out;
  }

  private static double[] graded(Cdl cdl, double[] v) {
    double[] out = alone(cdl, v);
    return cdl.saturation() == 1
        ? out
        : AdjustFormulas.cdlSaturation(cdl.saturation(), cdl.clamp(), out);
  }

  /**
   * With u = 2⁻²⁴: after the line a value t is off by 2u of itself and 2⁻³³, where it is a table of
   * its own; the power carries that on, and adds as much. Saturation takes the greatest of the
   * three (1 + 2s) times, with 6u of it and the float of s. The way back carries that on, and adds
   * 2u.
   */
  private static double bound(Cdl cdl, double[] in, double[] want) {
    double[] v = onAxis(cdl, in);
    double s = cdl.saturation();
    double off = 0;
    double size = 0;
    for (int i = 0; i < 3; i++) {
      double slope = cdl.slope().at(i);
      double offset = cdl.offset().at(i);
      double t = slope * v[i] + offset;
      DoubleUnaryOperator power =
          AdjustFormulas.slopeOffsetPower(1, 0, cdl.power().at(i), cdl.clamp());
      double offT = 2 * UNIT * Math.abs(t) + 0x1p-33;
      double made = power.applyAsDouble(t);
      off = Math.max(off, Math.abs(power.applyAsDouble(t + offT) - made));
      off = Math.max(off, Math.abs(power.applyAsDouble(t - offT) - made));
      size = Math.max(size, Math.abs(made));
    }
    off += 2 * UNIT * size + 0x1p-33;
    if (s != 1) {
      off = (1 + 2 * s) * off + 6 * UNIT * (1 + 2 * s) * size;
    }
    if (cdl.axis() == Axis.LINEAR) {
      return off;
    }
    double bound = 0;
    for (double w : want) {
      double back = EncodedAxis.encode(w);
      bound = Math.max(bound, Math.abs(EncodedAxis.decode(back + off) - w));
      bound = Math.max(bound, Math.abs(EncodedAxis.decode(back - off) - w));
    }
    return bound + 2 * UNIT * greatest(want) + 0x1p-33;
  }

  /**
   * The transfer functions of ASC CDL version 1.2 (formula from public descriptions of it), worked
   * in another language: with the standard's clamps, and without.
   */
  @ParameterizedTest
  @CsvSource({
    "0.18 0.4 0.7, 1 1 1, 0 0 0, 1 1 1, 0, 0.374888 0.374888 0.374888, 0.374888 0.374888 0.374888",
    "0.18 0.4 0.7, 1.2 1 0.8, 0.02 -0.03 0.05, 0.9 1.1 1, 1, 0.272659606 0.334982328 0.61,"
        + " 0.272659606 0.334982328 0.61",
    "0.18 0.4 0.7, 1.2 1 0.8, 0.02 -0.03 0.05, 0.9 1.1 1, 1.4, 0.245087931 0.332339742 0.717364483,"
        + " 0.245087931 0.332339742 0.717364483",
    "0.9 0.5 0.02, 1.3 1 1, 0 0 -0.1, 1 1 2, 1, 1 0.5 0, 1.17 0.5 -0.08",
    "0.9 0.5 0.02, 1.3 1 1, 0 0 -0.1, 1 1 2, 0, 0.5702 0.5702 0.5702, 0.600566 0.600566 0.600566",
    "2.5 0.5 -0.1, 1 1 1, 0 0 0, 2 2 2, 0.5, 0.6957 0.3207 0.1957, 3.875165 0.875165 0.700165",
    "0 1 0.25, 0.5 0.5 0.5, 0.25 0.25 0.25, 2.2 2.2 2.2, 1, 0.047366143 0.531049225 0.115576301,"
        + " 0.047366143 0.531049225 0.115576301"
  })
  void isTheStandards(
      String in,
      String slope,
      String offset,
      String power,
      double saturation,
      String clamped,
      String endless) {
    for (Axis axis : Axis.values()) {
      for (boolean clamp : new boolean[] {true, false}) {
        Cdl cdl = new Cdl(three(slope), three(offset), three(power), saturation, axis, clamp);
        float[][] p = new float[3][1];
        double[] light = toLight(cdl, numbers(in));
        for (int i = 0; i < 3; i++) {
          p[i][0] = (float) light[i];
        }
        Working.kernel(cdl).run(p[0], p[1], p[2], 0, 1);
        double[] got = onAxis(cdl, p[0][0], p[1][0], p[2][0]);
        double[] want = numbers(clamp ? clamped : endless);
        for (int i = 0; i < 3; i++) {
          // Nine digits printed, and floats: a fiftieth of a 16-bit code up to 1.
          Close.check(cdl + " channel " + i, got[i], want[i], 3e-7);
        }
      }
    }
  }

  private static double[] numbers(String text) {
    return java.util.Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  private static PerChannel three(String text) {
    double[] n = numbers(text);
    return new PerChannel(n[0], n[1], n[2]);
  }

  @Test
  void withItsClampNothingLeavesZeroToOne() {
    float[][] p = {{-5, 70, 0.5f}, {8, -3, 0.2f}, {-0.1f, 2, 900}};
    Working.kernel(new Cdl(ONE, NOTHING, ONE, 1.5, Axis.ENCODED, true)).run(p[0], p[1], p[2], 0, 3);
    for (float[] channel : p) {
      for (float v : channel) {
        assertThat(v).isBetween(0f, 1f);
      }
    }
  }

  /** Without saturation it is a curve like others, and the same numbers for all three are one. */
  @Test
  void oneNumberIsTheSameAsThreeAlike() {
    PerChannel almost = new PerChannel(1.1, 1.1, Math.nextUp(1.1));
    float[] v = {0.1f, 0.5f, 2};
    float[] even = v.clone();
    float[] three = v.clone();
    Working.kernel(new Cdl(PerChannel.all(1.1), NOTHING, ONE, 1, Axis.ENCODED, false))
        .run(even, v.clone(), v.clone(), 0, 3);
    Working.kernel(new Cdl(almost, NOTHING, ONE, 1, Axis.ENCODED, false))
        .run(three, v.clone(), v.clone(), 0, 3);
    assertThat(three).containsExactly(even);
  }
}
