package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Encoding for pixels: every code comes back, and the curve is the curve. */
class EncodeCurveTest {
  private static void assertEveryCodeComesBack(TransferCurve curve, int codes) {
    assertCodesComeBack(curve, codes, 0);
  }

  private static void assertCodesComeBack(TransferCurve curve, int codes, int within) {
    float[] table = DecodeTable.of(curve, codes);
    float[] encoded = table.clone();
    EncodeCurve.of(curve).apply(encoded, 0, codes);
    for (int code = 0; code < codes; code++) {
      int back = (int) Math.floor(encoded[code] * (codes - 1) + 0.5f);
      if (Math.abs(back - code) > within) {
        fail("code %d of %d, light %s, came back as %d", code, codes, table[code], back);
      }
    }
  }

  private static TransferCurve read(byte[] curve) {
    return IccReader.read(ProfileBytes.grey().tag("kTRC", curve).bytes()).curve(0);
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void everyCodeOfEveryNamedSpaceComesBack(NamedSpace name) {
    assertEveryCodeComesBack(ColourSpace.of(name).curve(0), 256);
    assertEveryCodeComesBack(ColourSpace.of(name).curve(0), 65_536);
  }

  @Test
  void everyCodeOfOtherCurvesComesBack() {
    TransferCurve[] curves = {
      TransferCurve.identity(),
      TransferCurve.gamma(1.8),
      TransferCurve.gamma(2.6),
      // the two pieces meet: e = slope·join + f − (a·join + b)^gamma
      new ParametricCurve(2, 0.9, 0.1, 0.2, 0.05, 0.01 + 0.003 - 0.145 * 0.145, 0.003),
      TransferCurve.sampled(0, 0.2, 0.3, 0.8, 1),
      read(ProfileBytes.curv(TransferCurve.gamma(1.4), 512))
    };
    for (TransferCurve curve : curves) {
      assertEveryCodeComesBack(curve, 256);
      assertEveryCodeComesBack(curve, 65_536);
    }
  }

  /**
   * The curve of srgb in the rounding of a file, which a grey profile keeps: its two pieces miss
   * each other by 8e-7, most of a code there, so that the code at the join may come back as the
   * next one.
   */
  @Test
  void wherePiecesMissEachOtherOneCodeIsLost() {
    TransferCurve rounded =
        read(ProfileBytes.para(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045));
    assertEveryCodeComesBack(rounded, 256);
    assertCodesComeBack(rounded, 65_536, 1);
  }

  /**
   * The engine's bound for encoded curves: 0.02 of a 16-bit code on 0…1, 2⁻²⁰ of the value above.
   */
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void isWithinAFiftiethOfA16BitCodeOfTheFormula(NamedSpace name) {
    TransferCurve curve = ColourSpace.of(name).curve(0);
    EncodeCurve encode = EncodeCurve.of(curve);
    for (int i = 0; i <= 100_000; i++) {
      float light = (float) (i / 50_000.0 * (i / 50_000.0));
      double expected = curve.toEncoded(light);
      double bound = Math.max(0.02 / 65_535, expected <= 1 ? 0 : expected * 0x1p-20);
      double off = Math.abs(encode.apply(light) - expected);
      double offBelow = Math.abs(encode.apply(-light) + expected);
      if (!(off <= bound && offBelow <= bound)) {
        fail("light %s is off by %s and %s, bound %s", light, off, offBelow, bound);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void edgesGiveWhatTheFormulaGives(NamedSpace name) {
    TransferCurve curve = ColourSpace.of(name).curve(0);
    EncodeCurve encode = EncodeCurve.of(curve);
    float[] edges = {
      0f,
      Float.MIN_VALUE,
      Float.MIN_NORMAL,
      1e-20f,
      1e-9f,
      0.0031308f,
      1 / 512f,
      Math.nextDown(1 / 512f),
      0.018053968f,
      Math.nextDown(1f),
      1f,
      Math.nextUp(1f),
      16f,
      65_504f
    };
    for (float edge : edges) {
      double expected = curve.toEncoded(edge);
      double bound = Math.max(0.02 / 65_535, expected * 0x1p-20);
      assertThat((double) encode.apply(edge)).isCloseTo(expected, within(bound));
      assertThat((double) encode.apply(-edge)).isCloseTo(-expected, within(bound));
    }
    for (float wild : new float[] {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY}) {
      assertThat(encode.apply(wild)).as("finite, so that no file holds nonsense").isFinite();
    }
  }

  @Test
  void onlyItsWindowIsTouched() {
    float[] v = {0.25f, 0.25f, 0.25f};
    EncodeCurve.of(TransferCurve.gamma(2)).apply(v, 1, 2);
    assertThat(v).containsExactly(0.25f, 0.5f, 0.25f);
  }
}
