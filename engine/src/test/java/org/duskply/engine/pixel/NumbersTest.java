package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every float that a stride of a prime number of bit patterns meets, against {@code StrictMath} in
 * double. The bound of 0.51 units of the last place is half a unit for the rounding to float and a
 * hundredth for the series, whose error is below 2⁻³³ (times 2⁻²⁴ that is 0.002 units).
 */
class NumbersTest {
  private static final double BOUND = 0.51;
  private static final int INFINITE = 0x7f800000;
  private static final int STRIDE = 1543;

  private interface FloatOperator {
    float at(float x);
  }

  private static void compare(FloatOperator fast, DoubleUnaryOperator exact, int from, int to) {
    for (int bits = from; bits < to && bits > 0; bits += STRIDE) {
      check(Float.intBitsToFloat(bits), fast, exact);
    }
    for (int bits = Math.max(from, 0x3f800000 - 5000); bits < 0x3f800000 + 5000; bits++) {
      check(Float.intBitsToFloat(bits), fast, exact);
    }
  }

  private static void check(float x, FloatOperator fast, DoubleUnaryOperator exact) {
    double want = exact.applyAsDouble(x);
    double error = Math.abs(fast.at(x) - want) / Math.ulp((float) want);
    if (!(error <= BOUND)) {
      throw new AssertionError(
          "x = " + x + ": " + fast.at(x) + " is " + error + " units from " + want);
    }
  }

  @Test
  void log2IsRightToHalfAUnit() {
    compare(Numbers::log2, x -> StrictMath.log(x) / StrictMath.log(2), 1, INFINITE);
  }

  @Test
  void log2OfPowersOfTwoIsExact() {
    for (int n = -149; n < 128; n++) {
      assertThat(Numbers.log2(Math.scalb(1f, n))).isEqualTo(n);
      assertThat(Numbers.exp2(n)).isEqualTo(Math.scalb(1f, n));
    }
  }

  @Test
  void exp2IsRightToHalfAUnit() {
    for (double x = -149.4; x < 128; x += 0x1.9p-12) {
      check((float) x, Numbers::exp2, v -> StrictMath.pow(2, v));
    }
    compare(Numbers::exp2, v -> StrictMath.pow(2, v), 1, Float.floatToIntBits(127.99f));
  }

  @Test
  void cbrtIsRightToHalfAUnitAndOdd() {
    compare(Numbers::cbrt, StrictMath::cbrt, 1, INFINITE);
    compare(x -> -Numbers.cbrt(-x), StrictMath::cbrt, 1, INFINITE);
  }

  @Test
  void cbrtOfCubesIsExact() {
    for (int n = 0; n <= 200; n++) {
      assertThat(Numbers.cbrt(n * n * n)).isEqualTo(n);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 1 / 2.4, 0.5, 1, 1.37, 2, 2.4, 7, -0.3, -2})
  void powIsRightToHalfAUnitAndOdd(double p) {
    // Held to results that a float can hold: 2⁻¹⁴⁹ to below 2¹²⁸.
    double reach = Math.abs(p);
    double low = Math.max(-149, -125 / reach);
    double high = Math.min(127.9, 125 / reach);
    int from = Math.max(1, Float.floatToIntBits((float) StrictMath.pow(2, low)));
    int to = Float.floatToIntBits((float) StrictMath.pow(2, high));
    compare(x -> Numbers.pow(x, p), x -> StrictMath.pow(x, p), from, to);
    compare(x -> -Numbers.pow(-x, p), x -> StrictMath.pow(x, p), from, to);
  }

  @Test
  void nothingHasValuesOfItsOwn() {
    assertThat(Numbers.log2(0f)).isEqualTo(Numbers.LOG2_OF_NOTHING);
    assertThat(Numbers.log2(-0f)).isEqualTo(Numbers.LOG2_OF_NOTHING);
    assertThat(Numbers.log2(-3f)).isEqualTo(Numbers.LOG2_OF_NOTHING);
    assertThat(Numbers.exp2(Numbers.LOG2_OF_NOTHING)).isZero();
    assertThat(Numbers.pow(0f, 0.5)).isZero();
    assertThat(Numbers.pow(0f, 0)).isEqualTo(1f);
    assertThat(Numbers.pow(0f, -1)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.pow(-2f, 2)).isEqualTo(-4f);
    assertThat(Float.floatToRawIntBits(Numbers.cbrt(-0f))).isEqualTo(0x80000000);
    assertThat(Numbers.cbrt(0f)).isZero();
  }

  @Test
  void finiteValuesGiveFiniteOnes() {
    assertThat(Numbers.exp2(128f)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.exp2(1e30f)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.exp2(-1e30f)).isZero();
    assertThat(Numbers.pow(Float.MAX_VALUE, 1.0000001)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.pow(Float.MAX_VALUE, 50)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.pow(Float.MIN_VALUE, -50)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.pow(-Float.MAX_VALUE, 2)).isEqualTo(-Float.MAX_VALUE);
  }

  @Test
  void whatIsNotFiniteNeitherTrapsNorHangs() {
    assertThat(Numbers.log2(Float.POSITIVE_INFINITY)).isEqualTo(128f);
    assertThat(Numbers.exp2(Float.POSITIVE_INFINITY)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.exp2(Float.NEGATIVE_INFINITY)).isZero();
    assertThat(Numbers.cbrt(Float.NEGATIVE_INFINITY)).isEqualTo(-Float.MAX_VALUE);
    assertThat(Numbers.pow(Float.POSITIVE_INFINITY, 2)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.log2(Float.NaN)).isNaN();
    assertThat(Numbers.exp2(Float.NaN)).isNaN();
    assertThat(Numbers.pow(Float.NaN, 0.5)).isNaN();
    assertThat(Numbers.pow(0.5f, Double.NaN)).isNaN();
    assertThat(Numbers.cbrt(Float.NaN)).isNaN();
  }
}
