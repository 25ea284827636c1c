package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Floats through a curve, held to the double formula rounded once. */
class DecodeCurveTest {
  private static final int STRIDE = 9973;
  private static final int MOST = Float.floatToIntBits(65504);

  private static void sameAs(TransferCurve curve, int from, int to, int stride) {
    DecodeCurve decode = DecodeCurve.of(curve);
    for (int bits = from; bits <= to; bits += stride) {
      float up = Float.intBitsToFloat(bits);
      if (decode.apply(up) != (float) curve.toLinear(up)
          || decode.apply(-up) != (float) curve.toLinear(-up)) {
        throw new AssertionError(up + " becomes " + decode.apply(up));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void everyNamedCurveRoundsAsItsFormula(NamedSpace space) {
    TransferCurve curve = ColourSpace.of(space).curve(0);
    sameAs(curve, 0, MOST, STRIDE);
    sameAs(curve, Float.floatToIntBits(0.499f), Float.floatToIntBits(0.5f), 1);
    sameAs(curve, Float.floatToIntBits(0.99999f), Float.floatToIntBits(1.00001f), 1);
  }

  /** What profiles may bring: great exponents, a lifted black, a toe that does not meet, steps. */
  @Test
  void soDoesEveryCurveOfAProfile() {
    sameAs(TransferCurve.gamma(1.8), 0, MOST, STRIDE);
    sameAs(TransferCurve.gamma(0.45), 0, MOST, STRIDE);
    sameAs(TransferCurve.gamma(8), 0, MOST, STRIDE);
    sameAs(TransferCurve.gamma(17), 0, MOST, STRIDE);
    sameAs(new ParametricCurve(2.4, 0.9, 0.1, 0.05, 0.04, 0.01, 0.02), 0, MOST, STRIDE);
    sameAs(new ParametricCurve(2.2, 1, -0.5, 0, 0, 0, 0), 0, MOST, STRIDE);
    sameAs(new ParametricCurve(3, 2e5, 1, 0, 0, -1, 0), 0, MOST, STRIDE);
    sameAs(TransferCurve.sampled(0, 0.1, 0.1, 0.4, 1), 0, MOST, STRIDE);
    sameAs(TransferCurve.identity(), 0, MOST, STRIDE);
  }

  /** The floats beside the place where toe and power meet, also where they do so with a step. */
  @Test
  void theToeEndsWhereTheFormulaSays() {
    for (double join : new double[] {0.04045, 0.018, 1 / 512.0, 0.1, 0.7, 1.3, -0.2}) {
      TransferCurve curve = new ParametricCurve(2.2, 1, 0, 0.5, join, 0, 0);
      int at = Float.floatToIntBits((float) Math.abs(join));
      sameAs(curve, at - 3, at + 3, 1);
    }
  }

  /**
   * The square of 1 + n·2⁻¹² for odd n lies exactly between two floats, if it is below 2; what is a
   * little less and a little more must not pass for one answer.
   */
  @Test
  void aTieIsLeftToTheFormula() {
    DecodeCurve square = DecodeCurve.of(TransferCurve.gamma(2));
    for (int n = 1; n < 1696; n += 2) {
      float x = 1 + n * 0x1p-12f;
      assertThat(square.quick(x)).isNaN();
      assertThat(square.apply(x)).isEqualTo((float) ((double) x * x));
    }
  }

  /** Otherwise the formula is asked for one float in 100,000 or so, here one at most of 20,000. */
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void theQuickWayIsTaken(NamedSpace space) {
    DecodeCurve decode = DecodeCurve.of(ColourSpace.of(space).curve(0));
    int asked = 0;
    for (int i = 0; i < 20_000; i++) {
      asked += Float.isNaN(decode.quick(0.1f + i / 20_000f)) ? 1 : 0;
    }
    assertThat(asked).isLessThanOrEqualTo(1);
  }

  /** Powers of whole numbers, exactly, by {@link BigDecimal}. */
  @ParameterizedTest
  @CsvSource({
    "0.0009765625, 2",
    "0.3, 3",
    "0.7071067811865476, 8",
    "0.9999999, 5",
    "1, 7",
    "1.0000001, 6",
    "3.3, 4",
    "1048576, 8",
    "9.5367431640625e-7, 8",
  })
  void aPowerIsAsCloseAsItSays(double base, int exponent) {
    BigDecimal exact = new BigDecimal(base).pow(exponent, MathContext.DECIMAL128);
    BigDecimal off = new BigDecimal(FinePower.of(base, exponent)).subtract(exact);
    assertThat(off.divide(exact, MathContext.DECIMAL64).abs().doubleValue())
        .isLessThan(FinePower.ERROR);
  }

  /** Against {@code StrictMath}, which is right to a unit of the last place, 2⁻⁵². */
  @Property
  void soIsAnyOther(
      @ForAll @DoubleRange(min = -20, max = 20) double stops,
      @ForAll @DoubleRange(min = 0, max = 8) double exponent) {
    double base = Math.min(FinePower.MOST, Math.max(FinePower.LEAST, StrictMath.pow(2, stops)));
    double want = StrictMath.pow(base, exponent);
    assertThat(Math.abs(FinePower.of(base, exponent) / want - 1))
        .isLessThan(FinePower.ERROR - 0x1p-51);
  }
}
