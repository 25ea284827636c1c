package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The encoded axis against IEC 61966-2-1, and the fast forms against the formula. */
class EncodedTest {
  // The design's own bound: a fiftieth of a 16-bit code.
  private static final double CODES = 0.02 / 65535;
  private static final double ABOVE = 0x1p-20;

  /** IEC 61966-2-1 decoding of 8-bit codes; values computed with two independent libraries. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "1, 0.000303527",
    "5, 0.0015176349",
    "10, 0.0030352698",
    "11, 0.0033465358",
    "32, 0.0144438436",
    "64, 0.0512694584",
    "100, 0.1274376804",
    "118, 0.1811642442",
    "127, 0.2122307574",
    "128, 0.2158605001",
    "160, 0.3515325995",
    "188, 0.502886458",
    "224, 0.7454042095",
    "254, 0.9911020971",
    "255, 1"
  })
  void decodesPublishedCodes(int code, double linear) {
    assertThat(Encoded.decodeExactly(code / 255.0)).isCloseTo(linear, within(1e-9));
    assertThat(Encoded.decode(code / 255f)).isCloseTo((float) linear, within(3e-7f));
  }

  /** IEC 61966-2-1 encoding, continued above 1 by its own formula and odd below 0 (CSS Color 4). */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.0001, 0.001292",
    "0.003, 0.03876",
    "0.0031308, 0.040449936",
    "0.0031309, 0.0404511778",
    "0.01, 0.0998528227",
    "0.18, 0.4613561295",
    "0.2140411405, 0.5",
    "0.5, 0.7353569831",
    "1, 1",
    "1.5, 1.1941765347",
    "4, 1.8247962953",
    "-0.01, -0.0998528227",
    "-0.25, -0.5370987305"
  })
  void encodesPublishedValues(double linear, double encoded) {
    assertThat(Encoded.encodeExactly(linear)).isCloseTo(encoded, within(1e-9));
    // 2⁻²⁴ of the value for each of the two roundings to float.
    assertThat(Encoded.encode((float) linear)).isCloseTo((float) encoded, within(3e-7f));
  }

  @Test
  void staysWithinAFiftiethOfACodeFromBlackToWhite() {
    for (int n = 0; n <= 3_000_000; n++) {
      float x = n / 3_000_000f;
      assertThat(Math.abs(Encoded.encode(x) - Encoded.encodeExactly(x))).isLessThan(CODES);
      double back = Encoded.encodeExactly(Encoded.decode(x));
      // The two published formulas miss each other by 2.9e-8 at the knee.
      assertThat(Math.abs(back - x)).isLessThan(CODES);
    }
  }

  @Test
  void everyFloatNearTheKneesIsAsGood() {
    for (double knee : new double[] {0.0031308, 0.04045}) {
      int middle = Float.floatToIntBits((float) knee);
      for (int bits = middle - 60_000; bits < middle + 60_000; bits++) {
        float x = Float.intBitsToFloat(bits);
        assertThat(Math.abs(Encoded.encode(x) - Encoded.encodeExactly(x))).isLessThan(CODES);
        assertThat(Math.abs(Encoded.encodeExactly(Encoded.decode(x)) - x)).isLessThan(CODES);
      }
    }
  }

  @Test
  void aboveWhiteItIsRelative() {
    for (int bits = Float.floatToIntBits(1f); bits < Float.floatToIntBits(0x1p32f); bits += 211) {
      float x = Float.intBitsToFloat(bits);
      double encoded = Encoded.encodeExactly(x);
      assertThat(Math.abs(Encoded.encode(x) - encoded)).isLessThan(ABOVE * encoded);
      double linear = Encoded.decodeExactly(x);
      assertThat(Math.abs(Encoded.decode(x) - linear)).isLessThan(ABOVE * linear);
    }
  }

  @Test
  void isOdd() {
    for (int bits = 1; bits > 0 && bits < 0x7f800000; bits += 9_973) {
      float x = Float.intBitsToFloat(bits);
      assertThat(Encoded.encode(-x)).isEqualTo(-Encoded.encode(x));
      assertThat(Encoded.decode(-x)).isEqualTo(-Encoded.decode(x));
    }
  }

  @Test
  void blackAndWhiteAreExact() {
    assertThat(Encoded.encode(0f)).isZero();
    assertThat(Encoded.encode(-0f)).isZero();
    assertThat(Encoded.decode(0f)).isZero();
    assertThat(Encoded.encode(1f)).isEqualTo(1f);
    assertThat(Encoded.decode(1f)).isEqualTo(1f);
  }

  @Test
  void arraysAreChangedInsideTheWindowOnly() {
    float[] v = {0.5f, 0.5f, 0.5f, 0.5f};
    Encoded.encode(v, 1, 3);
    assertThat(v).containsExactly(0.5f, Encoded.encode(0.5f), Encoded.encode(0.5f), 0.5f);
    Encoded.decode(v, 1, 2);
    assertThat(v[1]).isCloseTo(0.5f, within(1.2e-7f));
    assertThat(v[2]).isEqualTo(Encoded.encode(0.5f));
  }
}
