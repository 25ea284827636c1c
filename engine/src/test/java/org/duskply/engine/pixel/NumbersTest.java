package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.testing.Digests;
import org.duskply.engine.testing.Sequence;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The numbers of kernels against {@code StrictMath}, within 0.51 units of the last place. */
class NumbersTest {
  private static final double LN2 = StrictMath.log(2);
  private static final int INFINITE = Float.floatToIntBits(Float.POSITIVE_INFINITY);
  private static final int STRIDE = 9001;

  private interface FloatFunction {
    float at(float x);
  }

  private static void near(FloatFunction got, DoubleUnaryOperator wanted, float x) {
    double w = Math.min(wanted.applyAsDouble(x), Float.MAX_VALUE);
    double error = Math.abs(got.at(x) - w) / Math.ulp((float) w);
    if (!(error <= 0.51)) {
      throw new AssertionError(x + ": " + got.at(x) + ", should be " + w + ": " + error + " ulp");
    }
  }

  private static void everywhere(FloatFunction got, DoubleUnaryOperator wanted) {
    for (int bits = 1; bits < INFINITE; bits += STRIDE) {
      near(got, wanted, Float.intBitsToFloat(bits));
    }
  }

  @Test
  void logarithm() {
    everywhere(Numbers::log2, x -> StrictMath.log(x) / LN2);
  }

  @Test
  void logarithmKeepsItsDigitsNearOne() {
    for (int bits = 0x3f7f0000; bits < 0x3f810000; bits++) {
      near(Numbers::log2, x -> StrictMath.log1p(x - 1) / LN2, Float.intBitsToFloat(bits));
    }
  }

  @Test
  void powerOfTwo() {
    for (int i = -149 << 12; i < 128 << 12; i += 3) {
      near(Numbers::exp2, x -> StrictMath.pow(2, x), i / 4096f);
    }
    for (int stops = -149; stops < 128; stops++) {
      assertThat(Numbers.exp2(stops)).isEqualTo((float) StrictMath.pow(2, stops));
      assertThat(Numbers.log2((float) StrictMath.pow(2, stops))).isEqualTo(stops);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3, -0.5, 0.01, 1 / 2.4, 1, 1.3, 2.4, 5})
  void power(double p) {
    everywhere(x -> Numbers.pow(x, p), x -> StrictMath.pow(x, p));
  }

  @Test
  void cubeRoot() {
    everywhere(Numbers::cbrt, StrictMath::cbrt);
    for (int i = -300; i <= 300; i++) {
      assertThat(Numbers.cbrt(i * i * i)).isEqualTo(i);
    }
  }

  @Test
  void edges() {
    assertThat(Numbers.log2(0)).isEqualTo(Numbers.LOG2_OF_NOTHING);
    assertThat(Numbers.log2(-1)).isEqualTo(Numbers.LOG2_OF_NOTHING);
    assertThat(Numbers.log2(Float.POSITIVE_INFINITY)).isEqualTo(128);
    assertThat(Numbers.log2(Float.NaN)).isNaN();
    assertThat(Numbers.exp2(1000)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.exp2(-1000)).isZero();
    assertThat(Numbers.exp2(Float.NaN)).isNaN();
    assertThat(Numbers.pow(-0f, 2.4)).isEqualTo(-0f);
    assertThat(Numbers.pow(0, 0)).isEqualTo(1);
    assertThat(Numbers.pow(0, -1)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.pow(-4, 0.5)).isEqualTo(-2);
    assertThat(Numbers.pow(1e30f, 2)).isEqualTo(Float.MAX_VALUE);
    assertThat(Numbers.pow(Float.NaN, 2)).isNaN();
    assertThat(Numbers.cbrt(-0f)).isEqualTo(-0f);
    assertThat(Numbers.cbrt(-27)).isEqualTo(-3);
    assertThat(Numbers.cbrt(Float.MIN_VALUE)).isEqualTo((float) StrictMath.cbrt(Float.MIN_VALUE));
    assertThat(Numbers.cbrt(Float.NEGATIVE_INFINITY)).isEqualTo(-Float.MAX_VALUE);
    assertThat(Numbers.cbrt(Float.NaN)).isNaN();
  }

  @Test
  @Tag("bits")
  void sameBitsEverywhere() {
    float[] samples = new Sequence(1).next(65536, 0, 16);
    float[][] results = new float[4][samples.length];
    for (int i = 0; i < samples.length; i++) {
      results[0][i] = Numbers.log2(samples[i]);
      results[1][i] = Numbers.exp2(samples[i]);
      results[2][i] = Numbers.pow(samples[i], 1.3);
      results[3][i] = Numbers.cbrt(samples[i]);
    }
    assertThat(Digests.of(results))
        .isEqualTo("00aa7edccd08d37429696819c4056e1b38d8f331d22fa6b414d2cc035d03755f");
  }
}
