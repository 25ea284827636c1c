package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

<<<<<<< HEAD
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cubics by octaves against the curve they stand for. */
class SegmentsTest {
  private static final DoubleUnaryOperator CORNERED =
      x -> x < 0.3 ? 0.1 + 0.2 * x : x < 0.301 ? 0.16 + 90 * (x - 0.3) : 0.25 + 1.1 * (x - 0.301);

  private static DoubleUnaryOperator gamma(double power) {
    return x -> Math.copySign(StrictMath.pow(Math.abs(x), power), x);
  }

  /** Half a unit of the last place for the float, and the fit's own bound. */
  private static void check(Segments fast, DoubleUnaryOperator exact, float x) {
    double want = exact.applyAsDouble(x);
    double bound =
        0.5 * Math.ulp((float) want)
            + 1.1 * Math.max(Segments.ABSOLUTE, Segments.RELATIVE * Math.abs(want));
    double error = Math.abs(fast.apply(x) - want);
    if (!(error <= bound)) {
      throw new AssertionError(x + ": " + fast.apply(x) + " for " + want + ", bound " + bound);
    }
  }

  /** Encoders of every named space down to the light of one 16-bit code, 1e-11, and far below. */
  @ParameterizedTest
  @ValueSource(doubles = {1 / 2.6, 1 / 2.4, 1 / 2.2, 1 / 1.8, 1, 1.8, 2.2, 2.6})
  void followsAPowerWhereverAFloatCanBe(double power) {
    Segments fast = Segments.of(gamma(power));
    for (int bits = Float.floatToIntBits(1e-14f);
        bits <= Float.floatToIntBits(Segments.TOP);
        bits += 997) {
      float x = Float.intBitsToFloat(bits);
      check(fast, gamma(power), x);
      check(fast, gamma(power), -x);
    }
    assertThat(fast.bytes()).isLessThan(128 << 10);
  }

  @Test
  void keepsCornersAtTheFloatWhereTheyAre() {
    float low = knot(0.3);
    float high = knot(0.301);
    Segments fast = Segments.of(CORNERED, high, low);
    for (float corner : new float[] {low, high}) {
      int middle = Float.floatToIntBits(corner);
      for (int bits = middle - 70_000; bits < middle + 70_000; bits++) {
        check(fast, CORNERED, Float.intBitsToFloat(bits));
      }
    }
    for (int n = -3000; n < 3000; n++) {
      check(fast, CORNERED, n / 1000f);
    }
  }

  @Test
  void keepsCornersBelowNothing() {
    DoubleUnaryOperator odd = x -> -CORNERED.applyAsDouble(-x);
    Segments fast = Segments.of(odd, Math.nextUp(-knot(0.3)), Math.nextUp(-knot(0.301)));
    Segments mirror = Segments.of(CORNERED, knot(0.3), knot(0.301));
    int middle = Float.floatToIntBits(0.3f);
    for (int bits = middle - 30_000; bits < middle + 30_000; bits++) {
      float x = Float.intBitsToFloat(bits);
      assertThat(fast.apply(-x)).isEqualTo(-mirror.apply(x));
    }
  }

  @Test
  void neverFallsWhereTheCurveDoesNot() {
    // Flat, then steep without a knot declared: the hardest case for a cubic.
    DoubleUnaryOperator step = x -> x < 0.4 ? 0.05 : 0.05 + 30 * (x - 0.4) * (x - 0.4);
    for (Segments fast :
        new Segments[] {
          Segments.of(step), Segments.of(gamma(1 / 2.2)), Segments.of(CORNERED, knot(0.3))
        }) {
      float last = fast.apply(Math.nextDown(0.0625f));
      for (int bits = Float.floatToIntBits(0.0625f); bits < Float.floatToIntBits(1.1f); bits++) {
        float y = fast.apply(Float.intBitsToFloat(bits));
        assertThat(y >= last).isTrue();
        last = y;
=======
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
>>>>>>> tone
      }
    }
  }

  @Test
<<<<<<< HEAD
  void goesOnStraightBeyondTheTopAndStaysFinite() {
    Segments fast = Segments.of(gamma(3));
    assertThat(fast.apply(Segments.TOP)).isEqualTo(0x1p96f);
    // The last octave rises by 7/8 of 2⁹⁶ over 2³¹.
    assertThat(fast.apply(0x1p33f)).isEqualTo((float) (0x1p96 + 0x1p32 * 7 / 8 * 0x1p65));
    for (float x : new float[] {0x1p100f, Float.MAX_VALUE, Float.POSITIVE_INFINITY, Float.NaN}) {
      assertThat(Math.abs(fast.apply(x))).isBetween(0x1p96f, Float.MAX_VALUE);
    }
    assertThat(fast.apply(Float.NEGATIVE_INFINITY)).isBetween(-Float.MAX_VALUE, -0x1p96f);
  }

  @Test
  void leastFloatsAndBothZeros() {
    Segments lifted = Segments.of(x -> 0.25 + x);
    for (float x : new float[] {0f, -0f, Float.MIN_VALUE, -Float.MIN_VALUE, Float.MIN_NORMAL}) {
      assertThat(lifted.apply(x)).isEqualTo(0.25f);
    }
    Segments straight = Segments.of(x -> 3 * x);
    assertThat(straight.apply(Float.MIN_VALUE)).isEqualTo(3 * Float.MIN_VALUE);
    assertThat(straight.apply(0f)).isZero();
  }

  @Test
  void aStraightLineTakesOneSegmentAnOctave() {
    // 512 octaves of 4 bytes, and of one segment: two ints and four doubles.
    assertThat(Segments.of(x -> 1.7 * x).bytes()).isEqualTo(512 * 4 + 512 * (2 * 4 + 4 * 8));
  }

  private static float knot(double x) {
    float first = (float) x;
    return first < x ? Math.nextUp(first) : first;
=======
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
        x -> x < 0.495f ? 0.04 * x : x < 0.505f ? 0.0198 + 96 * (x - 0.495f) : 0.98 + 0.04 * (x - 0.505f);
    Segments segments = Segments.of(steep, 0.495f, 0.505f);
    float last = 0;
    for (int bits = 0x3e000000; bits < 0x40000000; bits++) {
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
      0, -0f, Float.MIN_VALUE, -Float.MIN_VALUE, Math.nextDown(Float.MIN_NORMAL), Float.MIN_NORMAL,
      Segments.TOP, 0x1p60f, Float.MAX_VALUE, -Float.MAX_VALUE, Float.POSITIVE_INFINITY,
      Float.NEGATIVE_INFINITY, Float.NaN
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
>>>>>>> tone
  }
}
