package org.duskply.recipe.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Scanner;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers against RFC 8785, appendix B, and the test sequence that its author published. */
class Es6NumberTest {
  /** RFC 8785, appendix B. */
  @Tag("bits")
  @ParameterizedTest
  @CsvSource({
    "0000000000000000, 0",
    "8000000000000000, 0",
    "0000000000000001, 5e-324",
    "8000000000000001, -5e-324",
    "7fefffffffffffff, 1.7976931348623157e+308",
    "ffefffffffffffff, -1.7976931348623157e+308",
    "4340000000000000, 9007199254740992",
    "c340000000000000, -9007199254740992",
    "4430000000000000, 295147905179352830000",
    "44b52d02c7e14af5, 9.999999999999997e+22",
    "44b52d02c7e14af6, 1e+23",
    "44b52d02c7e14af7, 1.0000000000000001e+23",
    "444b1ae4d6e2ef4e, 999999999999999700000",
    "444b1ae4d6e2ef4f, 999999999999999900000",
    "444b1ae4d6e2ef50, 1e+21",
    "3eb0c6f7a0b5ed8c, 9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d, 0.000001",
    "41b3de4355555553, 333333333.3333332",
    "41b3de4355555554, 333333333.33333325",
    "41b3de4355555555, 333333333.3333333",
    "41b3de4355555556, 333333333.3333334",
    "41b3de4355555557, 333333333.33333343",
    "becbf647612f3696, -0.0000033333333333333333",
    "43143ff3c1cb0959, 1424953923781206.2"
  })
  void appendixB(String bits, String text) {
    double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
    assertThat(Es6Number.text(value)).isEqualTo(text);
  }

  @Tag("bits")
  @Test
  void notFiniteIsAnError() {
    for (double value : new double[] {Double.NaN, 1 / 0.0, -1 / 0.0}) {
      assertThatThrownBy(() -> Es6Number.text(value)).isInstanceOf(IllegalArgumentException.class);
    }
  }

  /**
   * Where {@code Double.toString} before JDK 19 gives a digit too many (JDK-4511638): 2.0E-3 is
   * fine, 2⁻⁴⁴ and 2.2E-322 are not.
   */
  @Tag("bits")
  @Test
  void shortestWhereDoubleToStringWasNot() {
    assertThat(Es6Number.text(2e23)).isEqualTo("2e+23");
    assertThat(Es6Number.text(0x1p-44)).isEqualTo("5.684341886080802e-14");
    assertThat(Es6Number.text(2.2e-322)).isEqualTo("2.2e-322");
    assertThat(Es6Number.text(1.0E23)).isEqualTo("1e+23");
  }

  /**
   * SHA-256 of the first lines of the sequence (github.com/cyberphone/json-canonicalization, test
   * data of the RFC's author): 168 listed constants, 2,000 successive doubles from 2⁻¹⁰²², then
   * words of a chain of SHA-256.
   */
  @Tag("bits")
  @ParameterizedTest
  @CsvSource({
    "1000, be18b62b6f69cdab33a7e0dae0d9cfa869fda80ddc712221570f9f40a5878687",
    "10000, b9f7a8e75ef22a835685a52ccba7f7d6bdc99e34b010992cbc5864cd12be6892"
  })
  void publishedSequence(int lines, String hash) throws Exception {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    Sequence sequence = new Sequence();
    for (int i = 0; i < lines; i++) {
      double value = sequence.next();
      String hex = Long.toHexString(Double.doubleToRawLongBits(value));
      String line = hex + "," + Es6Number.text(value) + "\n";
      digest.update(line.getBytes(StandardCharsets.US_ASCII));
    }
    assertThat(HexFormat.of().formatHex(digest.digest())).isEqualTo(hash);
  }

  @Property(tries = 2000, seed = "20260611")
  void readsBack(@ForAll long bits) {
    double value = Double.longBitsToDouble(bits);
    if (Double.isFinite(value)) {
      assertThat(Double.parseDouble(Es6Number.text(value))).isEqualTo(value + 0.0);
    }
  }

  private static final class Sequence {
    private final Scanner constants =
        new Scanner(
            Es6NumberTest.class.getResourceAsStream("es6-numbers.txt"), StandardCharsets.US_ASCII);
    private int serial;
    private byte[] block = new byte[32];
    private ByteBuffer words = ByteBuffer.allocate(0);

    double next() throws Exception {
      if (constants.hasNext()) {
        return Double.longBitsToDouble(Long.parseUnsignedLong(constants.next(), 16));
      }
      if (serial < 2000) {
        return Double.longBitsToDouble(0x0010000000000000L + serial++);
      }
      double value = 0;
      while (value == 0 || !Double.isFinite(value)) {
        if (!words.hasRemaining()) {
          block = MessageDigest.getInstance("SHA-256").digest(block);
          words = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
        }
        value = words.getDouble();
      }
      return value;
    }
  }
}
