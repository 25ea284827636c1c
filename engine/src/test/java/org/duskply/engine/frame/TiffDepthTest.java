package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Depths, floats, planes, palettes and inks of TIFF, each in files written byte by byte. */
class TiffDepthTest {
  private static final AtomicInteger COUNT = new AtomicInteger();

  /** Any value of a depth, smooth in the large and rough in the small. */
  private static int code(int bits, int x, int y, int c) {
    int noise = (x * 7919 + y * 104729 + c * 1299709) * 0x9E3779B1;
    long mask = (1L << bits) - 1;
    long slope = mask / 400 * (x + y) + (mask >> 3) * c;
    return (int) ((slope + (noise >>> 20 & mask >> 4)) & mask);
  }

  /** Floats of every size that a picture holds, below 0 and above 1 too. */
  private static float light(int x, int y, int c) {
    return (x - 20) * 0.037f * (y % 7 == 0 ? 16 : 1) + c * 0.25f + y * 1e-4f;
  }

  private static int lightBits(int x, int y, int c) {
    return Float.floatToRawIntBits(light(x, y, c));
  }

  /** A half float as its bits, and what they stand for (IEEE 754 binary16). */
  private static int half(int x, int y, int c) {
    return (x * 131 + y * 17 + c * 5000) % 0x7c00 | (x + y) % 2 << 15;
  }

  private static double halfValue(int bits) {
    int exponent = bits >> 10 & 31;
    int fraction = bits & 1023;
    double magnitude =
        exponent == 0
            ? fraction * Math.pow(2, -24)
            : (1024 + fraction) * Math.pow(2, exponent - 25);
    return bits >> 15 != 0 ? -magnitude : magnitude;
  }

  private static FrameSource open(TiffFile file) {
    return FrameSources.open(Disk.file("d" + COUNT.incrementAndGet() + ".tif", file.bytes()));
  }

  record Way(int bits, int samples, boolean planar, ByteOrder order, int compression, int strip) {}

  static Stream<Way> ways() {
    List<Way> ways = new ArrayList<>();
    int[] compressions = {1, 5, 8, 32773};
    int n = 0;
    for (int bits : new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 24, 32}) {
      for (int samples : new int[] {1, 3}) {
        for (ByteOrder order : new ByteOrder[] {ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN}) {
          boolean planar = samples > 1 && n % 2 == 0;
          ways.add(new Way(bits, samples, planar, order, compressions[n % 4], 5 + n % 30));
          n++;
        }
      }
    }
    return ways.stream();
  }

  /** Full scale is 1 whatever the depth; what is deeper than 16 bits is rounded to 16. */
  @ParameterizedTest
  @MethodSource("ways")
  void everyDepth(Way way) {
    int bits = way.bits;
    TiffFile file =
        new TiffFile(37, 29, way.samples, bits, (x, y, c) -> code(bits, x, y, c))
            .order(way.order)
            .compression(way.compression)
            .strips(way.strip);
    FrameSource source = open(way.planar ? file.planar() : file);
    assertThat(source).isInstanceOf(TiffSource.class);
    double full = bits > 16 ? 65535 : (1 << bits) - 1;
    assertThat(source.info().fullScale()).isEqualTo(full);
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        for (Region part : Parts.of(source.unit(u), u)) {
          Samples s = reader.read(u, part);
          assertThat(s.area()).isEqualTo(part);
          check(way, s);
        }
      }
    }
  }

  private static void check(Way way, Samples s) {
    Region area = s.area();
    long most = (1L << way.bits) - 1;
    for (int y = area.top(); y < area.bottom(); y++) {
      for (int x = area.left(); x < area.right(); x++) {
        for (int c = 0; c < way.samples; c++) {
          long stored = code(way.bits, x, y, c) & most;
          double wanted = way.bits > 16 ? Math.rint(stored * 65535.0 / most) : stored;
          if (SamplesText.value(s, x, y, c) != wanted) {
            assertThat(SamplesText.value(s, x, y, c)).as("%d,%d,%d", x, y, c).isEqualTo(wanted);
          }
        }
      }
    }
  }

  abstract static class Made extends FrameSourceContract {
    abstract TiffFile file();

    @Override
    final FrameSource source() {
      return open(file());
    }
  }

  @Nested
  @DisplayName("12-bit RGB in planes, deflate, one tall strip a plane")
  class TallPlanes extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(31, 300, 3, 12, (x, y, c) -> code(12, x, y, c)).compression(8).planar();
    }

    @Override
    double expected(int x, int y, int channel) {
      return code(12, x, y, channel);
    }

    @Test
    void isForward() {
      assertThat(source().access()).isEqualTo(FrameSource.Access.FORWARD);
    }
  }

  @Nested
  @DisplayName("16-bit RGB and alpha in planes, LZW, differences, tiles")
  class TiledPlanes extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(70, 140, 5, 16, (x, y, c) -> code(16, x, y, c))
          .compression(5)
          .predictor(2)
          .tiles(32, 48)
          .shorts(338, 0, 2)
          .planar();
    }

    @Override
    double expected(int x, int y, int channel) {
      return code(16, x, y, channel == 3 ? 4 : channel);
    }
  }

  @Nested
  @DisplayName("32-bit floats, predictor 3, deflate, strips, big-endian")
  class SortedFloats extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(41, 200, 3, 32, TiffDepthTest::lightBits)
          .order(ByteOrder.BIG_ENDIAN)
          .shorts(339, 3, 3, 3)
          .compression(8)
          .predictor(3)
          .strips(30);
    }

    @Override
    double expected(int x, int y, int channel) {
      return light(x, y, channel);
    }
  }

  @Nested
  @DisplayName("32-bit floats in planes, predictor 3, LZW, tiles that pass the edge")
  class SortedFloatPlanes extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(41, 130, 3, 32, TiffDepthTest::lightBits)
          .shorts(339, 3, 3, 3)
          .compression(5)
          .predictor(3)
          .tiles(32, 32)
          .planar();
    }

    @Override
    double expected(int x, int y, int channel) {
      return light(x, y, channel);
    }
  }

  @Nested
  @DisplayName("32-bit floats as differences, deflate, one strip")
  class FloatDifferences extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(41, 290, 1, 32, TiffDepthTest::lightBits)
          .shorts(339, 3)
          .compression(8)
          .predictor(2);
    }

    @Override
    double expected(int x, int y, int channel) {
      return light(x, y, channel);
    }
  }

  @Nested
  @DisplayName("half floats, predictor 3, LZW")
  class Halves extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(41, 100, 3, 16, TiffDepthTest::half)
          .shorts(339, 3, 3, 3)
          .compression(5)
          .predictor(3)
          .strips(9);
    }

    @Override
    double expected(int x, int y, int channel) {
      return halfValue(half(x, y, channel));
    }
  }

  @Nested
  @DisplayName("24-bit floats, uncompressed (Adobe's TIFF Technical Note 3)")
  class Floats24 extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(
              30, 80, 1, 24, (x, y, c) -> (x % 2) << 23 | (55 + x % 15) << 16 | y * 700 & 0xffff)
          .shorts(339, 3)
          .strips(20);
    }

    @Override
    double expected(int x, int y, int channel) {
      double magnitude = (65536 + (y * 700 & 0xffff)) * Math.pow(2, 55 + x % 15 - 63 - 16);
      return x % 2 == 1 ? -magnitude : magnitude;
    }
  }

  @Nested
  @DisplayName("8-bit CMYK in planes, PackBits")
  class Inks extends Made {
    @Override
    TiffFile file() {
      return new TiffFile(33, 120, 4, 8, (x, y, c) -> code(8, x, y, c) & 0xf0)
          .shorts(262, 5)
          .compression(32773)
          .strips(25)
          .planar();
    }

    @Override
    double expected(int x, int y, int channel) {
      return code(8, x, y, channel) & 0xf0;
    }

    @Test
    void hasFourColours() {
      assertThat(source().info().colours()).isEqualTo(4);
    }
  }

  @Nested
  @DisplayName("4-bit palette of 16-bit colours, bits mirrored")
  class Palette extends Made {
    @Override
    TiffFile file() {
      int[] colours = new int[48];
      for (int i = 0; i < 48; i++) {
        colours[i] = i * 1300;
      }
      return new TiffFile(33, 120, 1, 4, (x, y, c) -> (x + y) % 16)
          .shorts(262, 3)
          .shorts(320, colours)
          .mirrored()
          .strips(25);
    }

    @Override
    double expected(int x, int y, int channel) {
      return (channel * 16 + (x + y) % 16) * 1300;
    }
  }

  /** Tag 284 missing means samples together (TIFF 6.0). */
  @Test
  void withoutTheTagSamplesStandTogether() {
    FrameSource source = open(new TiffFile(8, 8, 3, 8, (x, y, c) -> 10 * c + x));
    Samples s = source.reader().read(0);
    assertThat(SamplesText.value(s, 5, 3, 2)).isEqualTo(25);
  }

  /** Lab 50, 0, 0 is middle grey: 18.4187 % of the light of white (CIE 15). */
  @Test
  void labIsLight() {
    int[] codes = {32768, 0, 0};
    FrameSource source =
        open(new TiffFile(4, 4, 3, 16, (x, y, c) -> codes[c]).shorts(262, 8).compression(8));
    Samples s = source.reader().read(0);
    for (int c = 0; c < 3; c++) {
      assertThat(SamplesText.value(s, 1, 1, c)).isCloseTo(0.184187, within(1e-5));
    }
    // a* = −20 and b* = 30, signed (tag 262 = 8) and with 128 added (tag 262 = 9), are the same.
    int[] signed = {128, 256 - 20, 30};
    int[] moved = {128, 108, 158};
    Samples one =
        open(new TiffFile(4, 4, 3, 8, (x, y, c) -> signed[c]).shorts(262, 8)).reader().read(0);
    Samples other =
        open(new TiffFile(4, 4, 3, 8, (x, y, c) -> moved[c]).shorts(262, 9)).reader().read(0);
    assertThat(one.floats()).isEqualTo(other.floats());
    assertThat(one.floats()[0]).isLessThan(one.floats()[1]);
    assertThat(one.floats()[2]).isLessThan(one.floats()[0]);
  }

  /** Infinity and no number come through the reader and are held by the lineariser. */
  @Test
  void halvesThatAreNoNumbers() {
    int[] codes = {0x7c00, 0xfc00, 0x7e00, 0x0001, 0x7bff, 0x8000};
    FrameSource source = open(new TiffFile(6, 1, 1, 16, (x, y, c) -> codes[x]).shorts(339, 3));
    float[] read = source.reader().read(0).floats();
    assertThat(read)
        .containsExactly(
            Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, Float.NaN, 0x1p-24f, 65504f, -0f);
  }
}
