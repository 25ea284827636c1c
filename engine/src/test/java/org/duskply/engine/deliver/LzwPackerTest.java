package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** TIFF 6.0 section 13, and readers of other makers at the places where writers go wrong. */
class LzwPackerTest {
  @TempDir Path folder;

  private static byte[] pack(int... raw) {
    byte[] bytes = new byte[raw.length];
    for (int i = 0; i < raw.length; i++) {
      bytes[i] = (byte) raw[i];
    }
    Growing out = new Growing(16);
    new LzwPacker().pack(bytes, bytes.length, out);
    return out.toBytes();
  }

  /** The example of section 13: 7 7 7 8 8 7 7 6 6 becomes 256 7 258 8 8 258 6 6 257. */
  @Test
  void theExampleOfTheStandard() {
    StringBuilder bits = new StringBuilder();
    for (int code : new int[] {256, 7, 258, 8, 8, 258, 6, 6, 257}) {
      bits.append(String.format("%9s", Integer.toBinaryString(code)).replace(' ', '0'));
    }
    bits.append("0".repeat(-bits.length() & 7));
    byte[] packed = pack(7, 7, 7, 8, 8, 7, 7, 6, 6);
    StringBuilder seen = new StringBuilder();
    for (byte b : packed) {
      seen.append(String.format("%8s", Integer.toBinaryString(b & 0xFF)).replace(' ', '0'));
    }
    assertThat(seen).hasToString(bits.toString());
  }

  @Test
  void oneByteIsAClearItsCodeAndAnEnd() {
    assertThat(pack(0)).containsExactly(0x80, 0x00, 0x20, 0x20); // 100000000 000000000 100000001
  }

  /**
   * Strips of noise, of nearly a code a byte, that end where codes become wider (entries 511, 1023,
   * 2047) or the table is full (4094), 253, 765, 1789 and 3836 codes on.
   */
  @ParameterizedTest
  @ValueSource(ints = {84, 255, 597, 1279, 2558})
  void readersAgreeAboutTheEnds(int middle) throws IOException {
    for (int width = middle - 3; width <= middle + 3; width++) {
      Random random = new Random(width);
      TestPicture picture =
          TestPicture.of(width, 1, 8, NamedSpace.SRGB, (x, y, c) -> random.nextInt(256));
      check(picture);
    }
  }

  /** Strips that fill the table many times, with long strings and with none. */
  @Test
  void readersAgreeAboutLongStrips() throws IOException {
    Random random = new Random(1);
    check(TestPicture.of(1500, 100, 8, NamedSpace.SRGB, (x, y, c) -> random.nextInt(256)));
    check(TestPicture.of(1500, 100, 8, NamedSpace.SRGB, (x, y, c) -> x * y / 300 & 0xFF));
    check(TestPicture.of(1500, 100, 8, NamedSpace.SRGB, (x, y, c) -> 77));
  }

  private void check(TestPicture picture) throws IOException {
    SinkSpec spec = Specs.of(folder, Format.TIFF, Compress.LZW, picture);
    picture.deliver(spec);
    for (int[] codes : Readers.imageIo(spec.target(), "TIFF")) {
      assertThat(codes).as("%d wide", picture.width).isEqualTo(picture.codes);
    }
    assertThat(Readers.own(spec.target())).as("%d wide", picture.width).isEqualTo(picture.codes);
  }
}
