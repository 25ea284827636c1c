package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

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
      float last = fast.apply(Math.nextDown(0.25f));
      for (int bits = Float.floatToIntBits(0.25f); bits < Float.floatToIntBits(1.1f); bits++) {
        float y = fast.apply(Float.intBitsToFloat(bits));
        if (!(y >= last)) { // tens of millions of floats: not an assertion object for each
          throw new AssertionError(y + " after " + last + " at " + Float.intBitsToFloat(bits));
        }
        last = y;
      }
    }
  }

  @Test
  void goesOnStraightBeyondTheTopAndStaysFinite() {
    Segments fast = Segments.of(gamma(3));
    assertThat(fast.apply(Segments.TOP)).isEqualTo(0x1p96f);
    // The last octave rises by 7/8 of 2⁹⁶ over 2³¹.
    assertThat(fast.apply(0x1p33f)).isEqualTo((float) (0x1p96 + 0x1p32 * 7 / 8 * 0x1p65));
    for (float x : new float[] {0x1p100f, Float.MAX_VALUE, Float.POSITIVE_INFINITY}) {
      assertThat(Math.abs(fast.apply(x))).isBetween(0x1p96f, Float.MAX_VALUE);
    }
    assertThat(fast.apply(Float.NEGATIVE_INFINITY)).isBetween(-Float.MAX_VALUE, -0x1p96f);
  }

  @Test
  void whateverBitsNaNHasItCountsAsNothing() {
    Segments fast = Segments.of(x -> 0.25 + x);
    for (int bits : new int[] {0x7fc00000, 0xffc00000, 0x7f800001, 0xffffffff}) {
      assertThat(fast.apply(Float.intBitsToFloat(bits))).isEqualTo(0.25f);
    }
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
    // 512 octaves of 4 bytes, and of one segment: two ints and four doubles; NaN takes two more
    // cubics.
    assertThat(Segments.of(x -> 1.7 * x).bytes())
        .isEqualTo(512 * 4 + 512 * (2 * 4 + 4 * 8) + 2 * 4 * 8);
  }

  private static float knot(double x) {
    float first = (float) x;
    return first < x ? Math.nextUp(first) : first;
  }
}
