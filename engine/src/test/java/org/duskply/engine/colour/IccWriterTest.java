package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Locale;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Our own profiles against ICC.1 and against our own reader. */
class IccWriterTest {
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void isReadBackAsTheSameSpace(NamedSpace name) {
    assertThat(IccReader.read(IccWriter.profile(name))).isSameAs(ColourSpace.of(name));
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void hasTheSameBytesEveryTime(NamedSpace name) {
    byte[] first = IccWriter.profile(name);
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      assertThat(IccWriter.profile(name)).isEqualTo(first);
    } finally {
      Locale.setDefault(before);
    }
  }

  /** ICC.1:2010, 7.2 and 7.3: the header, alignment, and what a display profile must hold. */
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void isLaidOutAsTheStandardSays(NamedSpace name) throws Exception {
    byte[] profile = IccWriter.profile(name);
    ByteBuffer bytes = ByteBuffer.wrap(profile);
    assertThat(bytes.getInt(0)).isEqualTo(profile.length);
    assertThat(profile.length % 4).isZero();
    assertThat(bytes.getInt(8)).isEqualTo(0x04200000);
    assertThat(ascii(profile, 12, 12)).isEqualTo("mntrRGB XYZ ");
    assertThat(ascii(profile, 36, 4)).isEqualTo("acsp");
    assertThat(Arrays.copyOfRange(profile, 68, 80))
        .isEqualTo(
            new byte[] {0, 0, (byte) 0xF6, (byte) 0xD6, 0, 1, 0, 0, 0, 0, (byte) 0xD3, 0x2D});
    int end = 132 + 12 * bytes.getInt(128);
    for (int i = 0; i < bytes.getInt(128); i++) {
      int offset = bytes.getInt(136 + 12 * i);
      assertThat(offset % 4).isZero();
      assertThat(offset).isBetween(132 + 12 * bytes.getInt(128), end);
      end = Math.max(end, (offset + bytes.getInt(140 + 12 * i) + 3) & ~3);
    }
    assertThat(end).as("no byte is left over").isEqualTo(profile.length);
    byte[] identifier = Arrays.copyOfRange(profile, 84, 100);
    byte[] cleared = profile.clone();
    Arrays.fill(cleared, 44, 48, (byte) 0);
    Arrays.fill(cleared, 64, 68, (byte) 0);
    Arrays.fill(cleared, 84, 100, (byte) 0);
    assertThat(MessageDigest.getInstance("MD5").digest(cleared)).isEqualTo(identifier);
  }

  /**
   * Columns computed from the standards' numbers and read back by LittleCMS, printed to six
   * decimals: half a digit, half a step of 1/65536, and up to one step that makes the sum exact.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SRGB|0.436035 0.222488 0.013916|0.385117 0.716904 0.097061|0.143051 0.060608 0.713913",
        "DISPLAY_P3|0.515121 0.241196 -0.001053|0.291977 0.692245 0.041885"
            + "|0.157104 0.066574 0.784073",
        "A98_RGB|0.609741 0.311111 0.01947|0.205276 0.625671 0.060867"
            + "|0.149185 0.063217 0.744553",
        "REC2020|0.673477 0.279037 -0.001938|0.165665 0.675339 0.029984"
            + "|0.125046 0.045609 0.796844"
      })
  void columnsAreThosePrinted(NamedSpace name, String red, String green, String blue) {
    byte[] profile = IccWriter.profile(name);
    String[] wanted = {red, green, blue};
    String[] tags = {"rXYZ", "gXYZ", "bXYZ"};
    for (int channel = 0; channel < 3; channel++) {
      double[] printed =
          Arrays.stream(wanted[channel].split(" ")).mapToDouble(Double::parseDouble).toArray();
      int[] column = numbers(profile, tags[channel], 3);
      for (int row = 0; row < 3; row++) {
        assertThat(column[row] / 65536.0).isCloseTo(printed[row], within(2.5 / 65536));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void columnsSumToTheWhiteExactly(NamedSpace name) {
    byte[] profile = IccWriter.profile(name);
    int[] white = {0xF6D6, 0x10000, 0xD32D};
    int[] red = numbers(profile, "rXYZ", 3);
    int[] green = numbers(profile, "gXYZ", 3);
    int[] blue = numbers(profile, "bXYZ", 3);
    for (int row = 0; row < 3; row++) {
      assertThat(red[row] + green[row] + blue[row]).isEqualTo(white[row]);
    }
    assertThat(numbers(profile, "wtpt", 3)).isEqualTo(white);
  }

  @Test
  void saysWhatItIsInOurOwnWords() {
    byte[] profile = IccWriter.profile(NamedSpace.A98_RGB);
    assertThat(words(profile, "desc")).isEqualTo("Duskply a98-rgb");
    assertThat(words(profile, "cprt")).isEqualTo("No rights reserved");
    assertThat(words(IccWriter.profile(NamedSpace.SRGB), "desc")).isEqualTo("Duskply sRGB");
  }

  private static String words(byte[] profile, String tag) {
    int at = ByteBuffer.wrap(profile).getInt(ProfileBytes.entry(profile, tag) + 4);
    assertThat(ascii(profile, at, 4)).isEqualTo("mluc");
    int length = ByteBuffer.wrap(profile).getInt(at + 20);
    return new String(profile, at + 28, length, StandardCharsets.UTF_16BE);
  }

  private static int[] numbers(byte[] profile, String tag, int count) {
    ByteBuffer bytes = ByteBuffer.wrap(profile);
    int at = bytes.getInt(ProfileBytes.entry(profile, tag) + 4) + 8;
    int[] numbers = new int[count];
    for (int i = 0; i < count; i++) {
      numbers[i] = bytes.getInt(at + 4 * i);
    }
    return numbers;
  }

  private static String ascii(byte[] bytes, int at, int length) {
    return new String(bytes, at, length, StandardCharsets.US_ASCII);
  }
}
