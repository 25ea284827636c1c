package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Digests;
import org.duskply.engine.testing.Sequence;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The curve of IEC 61966-2-1 and its inverse, against the formula in {@code StrictMath}. */
class EncodedTest {
  private static final int ONE = Float.floatToIntBits(1);
  private static final int TOP = Float.floatToIntBits(Segments.TOP);
  private static final int STRIDE = 1999; // odd, so that every low bit of the mantissa occurs
  private static final double CODE = 1 / 65535d;

  @Test
  void fromBlackToWhiteBothWaysKeepWithinATwoHundredthOfACode() {
    for (int bits = 0; bits <= ONE; bits += STRIDE) {
      float x = Float.intBitsToFloat(bits);
      Close.check(x, Encoded.encode(x), Encoded.encodeExactly(x), 0.005 * CODE);
      Close.check(x, Encoded.encodeExactly(Encoded.decode(x)), x, 0.005 * CODE);
    }
  }

  @Test
  void aboveWhiteBothWaysKeepWithinAFloatsRounding() {
    // One rounding to float, 2⁻²⁴, and the cubic's own 2⁻²⁵.
    double bound = 0x1p-24 + Segments.RELATIVE;
    for (int bits = ONE; bits <= TOP; bits += STRIDE) {
      float x = Float.intBitsToFloat(bits);
      Close.check(x, Encoded.encode(x), Encoded.encodeExactly(x), bound);
      Close.check(x, Encoded.decode(x), Encoded.decodeExactly(x), bound);
    }
  }

  @Test
  void everyCodeOfSixteenBitsComesBack() {
    for (int code = 0; code <= 65535; code++) {
      float x = Encoded.decode((float) (code * CODE));
      assertThat(Math.round(Encoded.encode(x) * 65535)).isEqualTo(code);
    }
  }

  @Test
  void neverFallsAndIsOdd() {
    float encoded = 0;
    float decoded = 0;
    for (int bits = 0; bits <= TOP; bits += 211) {
      float x = Float.intBitsToFloat(bits);
      float e = Encoded.encode(x);
      float d = Encoded.decode(x);
      if (e < encoded || d < decoded || Encoded.encode(-x) != -e || Encoded.decode(-x) != -d) {
        throw new AssertionError("at " + x);
      }
      encoded = e;
      decoded = d;
    }
  }

  /** Values of the standard's formula, printed to eight digits; computed in double precision. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "1, 1",
    "0.0031308, 0.040449936",
    "0.18, 0.46135613",
    "0.21404114, 0.5",
    "0.5, 0.73535698",
    "2, 1.3532560",
    "-0.18, -0.46135613"
  })
  void standardValues(float linear, double encoded) {
    Close.check(linear, Encoded.encode(linear), encoded, 1e-7);
    Close.check(encoded, Encoded.decode((float) encoded), linear, 2e-7);
  }

  @Test
  void signedNothingAndWhatIsNotANumber() {
    assertThat(Encoded.encode(-0f)).isEqualTo(-0f);
    assertThat(Encoded.encode(Float.MIN_VALUE)).isEqualTo(12.92f * Float.MIN_VALUE);
    for (float x : new float[] {1e38f, -1e38f, Float.POSITIVE_INFINITY, Float.NaN}) {
      assertThat(Encoded.encode(x)).isFinite();
      assertThat(Encoded.decode(x)).isFinite();
    }
  }

  @Test
  @Tag("bits")
  void sameBitsEverywhere() {
    float[] encoded = new Sequence(1).next(65536, -0.5, 8);
    float[] decoded = encoded.clone();
    Encoded.encode(encoded, 0, encoded.length);
    Encoded.decode(decoded, 0, decoded.length);
    assertThat(Digests.of(encoded, decoded))
        .isEqualTo("b52a625535d9e09024cc64e97cf0429b783dec878be81d29d6791d3a81a840d8");
  }
}
