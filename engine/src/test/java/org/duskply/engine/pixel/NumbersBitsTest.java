package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.Lcg;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The bits of the kernels' numbers: the same on every machine, Java, and interpreted. */
@Tag("bits")
class NumbersBitsTest {
  private interface FloatOperator {
    float at(float x);
  }

  /** Positive floats of every size, as many of each octave. */
  private static String bits(FloatOperator operator) {
    Lcg noise = new Lcg(7);
    float[] values = new float[60_000];
    for (int i = 0; i < values.length; i++) {
      values[i] = operator.at(Float.intBitsToFloat((int) (noise.next() * 0x7f000000)));
    }
    return Bits.sha256(values);
  }

  @Test
  void numbers() {
    assertThat(bits(Numbers::log2)).startsWith("f19648162353fbe9");
    assertThat(bits(x -> Numbers.exp2(Numbers.log2(x) * 0.7f))).startsWith("408b6ca727561fb1");
    assertThat(bits(x -> Numbers.pow(x, 0.37))).startsWith("41cd895357b5f451");
    assertThat(bits(x -> Numbers.cbrt(-x))).startsWith("d28cb3805a309334");
  }

  @Test
  void encodedAxis() {
    assertThat(bits(Encoded::encode)).startsWith("02a5a77cc77a0eb0");
    assertThat(bits(x -> Encoded.decode(-x))).startsWith("38bc91055e6a33c7");
  }
}
