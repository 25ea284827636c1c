package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteOrder;
import java.util.concurrent.atomic.AtomicInteger;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Our own TIFF reader against files written byte by byte from TIFF 6.0. */
class TiffSourceTest {
  private static final AtomicInteger COUNT = new AtomicInteger();

  /** Smooth with noise, both ends of the range, channels that differ. */
  private static int sample(int bits, int x, int y, int c) {
    int noise = (x * 7919 + y * 104729 + c * 1299709) * 0x9E3779B1 >>> 20;
    int v = (x * 37 + y * 11) * 64 + c * 9000 + noise;
    return bits == 8 ? v >> 6 & 0xff : bits == 16 ? v & 0xffff : v * 104729;
  }

  /** A variant of the file; subclasses say how it is stored. */
  abstract static class Variant extends FrameSourceContract {
    private final int samples;
    private final int bits;

    Variant(int samples, int bits) {
      this.samples = samples;
      this.bits = bits;
    }

    abstract TiffFile store(TiffFile file);

    @Override
    final FrameSource source() {
      TiffFile file =
          store(new TiffFile(93, 331, samples, bits, (x, y, c) -> sample(bits, x, y, c)));
      return FrameSources.open(Disk.file("v" + COUNT.incrementAndGet() + ".tif", file.bytes()));
    }

    @Override
    double expected(int x, int y, int channel) {
      return sample(bits, x, y, channel);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, deflate, differences, little-endian, one row a strip")
  class A extends Variant {
    A() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.compression(8).predictor(2).strips(1);
    }

    @Test
    void isRandom() {
      assertThat(source().access()).isEqualTo(FrameSource.Access.RANDOM);
      assertThat(source().unit(0).height()).isEqualTo(16);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, LZW, differences, big-endian, 50 rows a strip")
  class B extends Variant {
    B() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.order(ByteOrder.BIG_ENDIAN).compression(5).predictor(2).strips(50);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, uncompressed, one strip")
  class C extends Variant {
    C() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f;
    }

    @Test
    void isRandom() {
      assertThat(source().access()).isEqualTo(FrameSource.Access.RANDOM);
      assertThat(source().units()).isEqualTo(6);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, deflate, differences, big-endian, one strip")
  class D extends Variant {
    D() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.order(ByteOrder.BIG_ENDIAN).compression(32946).predictor(2);
    }

    @Test
    void isForward() {
      assertThat(source().access()).isEqualTo(FrameSource.Access.FORWARD);
    }
  }

  @Nested
  @DisplayName("8-bit RGB, LZW, differences, one strip")
  class E extends Variant {
    E() {
      super(3, 8);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.compression(5).predictor(2);
    }

    @Test
    void isForward() {
      assertThat(source().access()).isEqualTo(FrameSource.Access.FORWARD);
    }
  }

  @Nested
  @DisplayName("8-bit grey, deflate, tiles of 32 × 48, big-endian BigTIFF")
  class F extends Variant {
    F() {
      super(1, 8);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.order(ByteOrder.BIG_ENDIAN).big().compression(8).tiles(32, 48);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, LZW, differences, tiles of 64 × 64")
  class G extends Variant {
    G() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.compression(5).predictor(2).tiles(64, 64);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, deflate, tiles of 64 × 320, taller than a unit may be")
  class H extends Variant {
    H() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.compression(8).predictor(2).tiles(64, 320);
    }

    @Test
    void isForward() {
      assertThat(source().access()).isEqualTo(FrameSource.Access.FORWARD);
    }
  }

  @Nested
  @DisplayName("16-bit RGB, uncompressed tiles of 64 × 320")
  class I extends Variant {
    I() {
      super(3, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.tiles(64, 320);
    }
  }

  @Nested
  @DisplayName("16-bit grey, white is zero, deflate, differences")
  class J extends Variant {
    J() {
      super(1, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.shorts(262, 0).compression(8).predictor(2).strips(70);
    }

    @Override
    double expected(int x, int y, int channel) {
      return 65535 - sample(16, x, y, channel);
    }
  }

  @Nested
  @DisplayName("16-bit RGB and straight alpha behind an extra sample that is none")
  class K extends Variant {
    K() {
      super(5, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.shorts(338, 0, 2).compression(8).predictor(2).strips(40);
    }

    @Override
    double expected(int x, int y, int channel) {
      return sample(16, x, y, channel == 3 ? 4 : channel);
    }

    @Test
    void alphaIsStraight() {
      assertThat(source().info().alpha()).isEqualTo(FrameInfo.Alpha.STRAIGHT);
    }
  }

  @Nested
  @DisplayName("8-bit grey, white is zero, with straight alpha")
  class L extends Variant {
    L() {
      super(2, 8);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.shorts(262, 0).shorts(338, 2).strips(100);
    }

    @Override
    double expected(int x, int y, int channel) {
      return channel == 0 ? 255 - sample(8, x, y, 0) : sample(8, x, y, 1);
    }
  }

  @Nested
  @DisplayName("8-bit RGB with an unspecified extra sample, which is not alpha")
  class M extends Variant {
    M() {
      super(4, 8);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.shorts(338, 0).compression(5).strips(30);
    }

    @Test
    void hasNoAlpha() {
      assertThat(source().info().alpha()).isEqualTo(FrameInfo.Alpha.NONE);
      assertThat(source().info().channels()).isEqualTo(3);
    }
  }

  @Nested
  @DisplayName("8-bit RGB, PackBits")
  class N extends Variant {
    N() {
      super(3, 8);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.compression(32773).strips(50);
    }
  }

  @Nested
  @DisplayName("8-bit grey, white is zero, PackBits")
  class O extends Variant {
    O() {
      super(1, 8);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.shorts(262, 0).compression(32773).strips(50);
    }

    @Override
    double expected(int x, int y, int channel) {
      return 255 - sample(8, x, y, channel);
    }
  }

  @Nested
  @DisplayName("16-bit grey, white is zero, PackBits, big-endian")
  class P extends Variant {
    P() {
      super(1, 16);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.order(ByteOrder.BIG_ENDIAN).shorts(262, 0).compression(32773).strips(50);
    }

    @Override
    double expected(int x, int y, int channel) {
      return 65535 - sample(16, x, y, channel);
    }
  }

  @Nested
  @DisplayName("32-bit grey, rounded to 16 bits")
  class Q extends Variant {
    Q() {
      super(1, 32);
    }

    @Override
    TiffFile store(TiffFile f) {
      return f.strips(50);
    }

    @Override
    double expected(int x, int y, int channel) {
      return Math.rint((sample(32, x, y, channel) & 0xffffffffL) / 65537.0);
    }
  }
}
