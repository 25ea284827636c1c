package org.duskply.examples.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against {@link StrictMath} (fdlibm); the bounds are those that {@link Maths} promises. */
class MathsTest {
  @Test
  void exponentialsAndLogarithms() {
    for (double x = -40; x < 40; x += 0.0137) {
      double exact = StrictMath.pow(2, x);
      assertThat(Maths.exp2(x)).as("2^%s", x).isCloseTo(exact, within(2e-7 * exact));
      assertThat(Maths.log2(exact)).as("log2 %s", exact).isCloseTo(x, within(1e-6));
    }
    assertThat(Maths.exp2(-2000)).isZero();
    assertThat(Maths.pow(0, 0.5)).isZero();
    assertThat(Maths.pow(-1, 0.5)).isZero();
    assertThat(Maths.pow(9, 0.5)).isCloseTo(3, within(3e-6));
  }

  @Test
  void anglesAndWaves() {
    for (double a = -9.4; a < 9.4; a += 0.0113) {
      assertThat(Maths.sin(a)).as("sin %s", a).isCloseTo(StrictMath.sin(a), within(1e-6));
      assertThat(Maths.cos(a)).as("cos %s", a).isCloseTo(StrictMath.cos(a), within(1e-6));
      double y = StrictMath.sin(a);
      double x = StrictMath.cos(a);
      assertThat(Maths.angle(y, x))
          .as("angle %s", a)
          .isCloseTo(StrictMath.atan2(y, x), within(1e-4));
    }
  }
}
