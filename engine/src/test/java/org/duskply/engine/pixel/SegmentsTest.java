package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.Close;
import org.junit.jupiter.api.Test;

/** Curves as short cubics: how near, how they join, what becomes of floats at the edge. */
class SegmentsTest {
  private static final int TOP = Float.floatToIntBits(Segments.TOP);
  private static final double ROUNDING = 0x1p-24;

  private static void follows(DoubleUnaryOperator curve, Segments segments) {
    for (int bits = 0; bits <= TOP; bits += 1009) {
      float x = Float.intBitsToFloat(bits);
      for (float signed : new float[] {x, -x}) {
        double wanted = curve.applyAsDouble(signed);
        double room = Math.max(Segments.ABSOLUTE, Segments.RELATIVE * Math.abs(wanted));
        double error = Math.abs(segments.apply(signed) - wanted);
        if (!(error <= room + ROUNDING * Math.abs(wanted))) {
          throw new AssertionError(signed + ": off by " + error);
        }
      }
    }
  }

  @Test
  void straightLinesAreExact() {
    Segments line = Segments.of(x -> 3 * x + 0.25);
    for (int bits = 0; bits <= TOP; bits += 9973) {
      float x = Float.intBitsToFloat(bits);
      assertThat(line.apply(x)).isEqualTo((float) (3d * x + 0.25));
      assertThat(line.apply(-x)).isEqualTo((float) (-3d * x + 0.25));
    }
  }

  @Test
  void steepAndFlatPowers() {
    for (double p : new double[] {0.3, 0.45, 1.7, 3}) {
      DoubleUnaryOperator curve = x -> Math.copySign(StrictMath.pow(Math.abs(x), p), x);
      follows(curve, Segments.of(curve));
    }
  }

  @Test
  void aCornerStaysACorner() {
    float knot = 0.3f;
    DoubleUnaryOperator curve = x -> x < knot ? 0.5 * x : 0.5 * knot + 4 * (x - knot);
    Segments segments = Segments.of(curve, knot);
    follows(curve, segments);
    for (int i = -4000; i < 4000; i++) {
      float x = Float.intBitsToFloat(Float.floatToIntBits(knot) + i);
      Close.check(x, segments.apply(x), curve.applyAsDouble(x), Segments.RELATIVE + ROUNDING);
    }
  }

  @Test
  void aJumpStaysWhereItIs() {
    Segments segments = Segments.of(x -> x < 0.7f ? 0 : 1, 0.7f);
    assertThat(segments.apply(Math.nextDown(0.7f))).isZero();
    assertThat(segments.apply(0.7f)).isEqualTo(1);
  }

  @Test
  void manyKnotsCloseTogether() {
    float[] knots = new float[40];
    for (int i = 0; i < knots.length; i++) {
      knots[i] = 0.5f + i * 0x1p-9f;
    }
    DoubleUnaryOperator zigzag =
        x -> {
          double way = (Math.abs(x) - 0.5) * 512;
          double past = way - Math.floor(way);
          boolean inside = x >= 0.5 && way < 39;
          return x + (inside ? 0.001 * Math.min(past, 1 - past) : 0);
        };
    float[] halves = Arrays.copyOf(knots, 79);
    for (int i = 0; i < 39; i++) {
      halves[40 + i] = knots[i] + 0x1p-10f;
    }
    follows(zigzag, Segments.of(zigzag, halves));
  }

  @Test
  void aCurveThatDoesNotFallIsNeverMadeTo() {
    // As steep as a tone curve gets: from 0.02 to 0.98 within a hundredth, with corners.
    DoubleUnaryOperator steep =
        x ->
            x < 0.495f
                ? 0.04 * x
                : x < 0.505f ? 0.0198 + 96 * (x - 0.495f) : 0.98 + 0.04 * (x - 0.505f);
    Segments segments = Segments.of(steep, 0.495f, 0.505f);
    float last = 0;
    for (int bits = 0x3e000000; bits < 0x40000000; bits += 7) {
      float y = segments.apply(Float.intBitsToFloat(bits));
      if (y < last) {
        throw new AssertionError("falls at " + Float.intBitsToFloat(bits));
      }
      last = y;
    }
  }

  @Test
  void anyFloatGivesAFiniteOne() {
    Segments square = Segments.of(x -> x * x);
    float[] edges = {
      0,
      -0f,
      Float.MIN_VALUE,
      -Float.MIN_VALUE,
      Math.nextDown(Float.MIN_NORMAL),
      Float.MIN_NORMAL,
      Segments.TOP,
      0x1p60f,
      Float.MAX_VALUE,
      -Float.MAX_VALUE,
      Float.POSITIVE_INFINITY,
      Float.NEGATIVE_INFINITY,
      Float.NaN
    };
    for (float x : edges) {
      assertThat(square.apply(x)).isFinite();
    }
    assertThat(Segments.of(x -> x).apply(-0f)).isEqualTo(-0f);
    assertThat(Segments.of(x -> x).apply(Float.POSITIVE_INFINITY)).isEqualTo(Float.MAX_VALUE);
  }

  @Test
  void touchesOnlyItsWindow() {
    float[] v = {4, 4, 4, 4, 4};
    Segments.of(x -> x / 2).apply(v, 1, 4);
    assertThat(v).containsExactly(4, 2, 2, 2, 4);
  }
}
