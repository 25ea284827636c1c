package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.engine.testing.PngFile;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** PNG files written byte by byte from the standard (PNG, third edition). */
class PngFrameTest {
  private static int deep(int x, int y, int c) {
    return x * 911 + y * 4099 + c * 17 & 0xffff;
  }

  private static FrameSource open(PngFile file) {
    return FrameSources.open(Disk.file("made.png", file.bytes()));
  }

  private static PngFile small() {
    return new PngFile(5, 4, 2, 8, (x, y, c) -> x + y + c);
  }

  private static FrameColour colour(PngFile file) {
    return FrameColour.of("made.png", open(file).info(), null);
  }

  @Nested
  class SixteenBitRgbAndAlpha extends FrameSourceContract {
    @Override
    FrameSource source() {
      return open(new PngFile(61, 150, 6, 16, PngFrameTest::deep));
    }

    @Override
    double expected(int x, int y, int channel) {
      return deep(x, y, channel);
    }
  }

  @Nested
  class FourBitPaletteWithTransparency extends FrameSourceContract {
    @Override
    FrameSource source() {
      byte[] palette = new byte[48];
      for (int i = 0; i < 48; i++) {
        palette[i] = (byte) (i * 5);
      }
      byte[] alphas = {0, 77};
      return open(
          new PngFile(61, 150, 3, 4, (x, y, c) -> x + y & 15)
              .chunk("PLTE", palette)
              .chunk("tRNS", alphas));
    }

    @Override
    double expected(int x, int y, int channel) {
      int index = x + y & 15;
      if (channel == 3) {
        return index == 0 ? 0 : index == 1 ? 77 : 255;
      }
      return (3 * index + channel) * 5;
    }
  }

  /** The reader behind leaves a transparent colour out at this depth. */
  @Nested
  class SixteenBitRgbWithATransparentColour extends FrameSourceContract {
    @Override
    FrameSource source() {
      byte[] key = {0x03, (byte) 0x8f, 0x03, (byte) 0xa0, 0x03, (byte) 0xb1};
      return open(new PngFile(61, 150, 2, 16, PngFrameTest::deep).chunk("tRNS", key));
    }

    @Override
    double expected(int x, int y, int channel) {
      return channel < 3 ? deep(x, y, channel) : x == 1 && y == 0 ? 0 : 65535;
    }
  }

  /** The reader behind stretches these to 8 bits, which others of this depth are not. */
  @Nested
  class FourBitGreyWithATransparentGrey extends FrameSourceContract {
    @Override
    FrameSource source() {
      byte[] key = {0, 7};
      return open(new PngFile(61, 150, 0, 4, (x, y, c) -> x + y & 15).chunk("tRNS", key));
    }

    @Override
    double expected(int x, int y, int channel) {
      int grey = x + y & 15;
      return channel == 0 ? grey : grey == 7 ? 0 : 15;
    }
  }

  @Nested
  class TwoBitGrey extends FrameSourceContract {
    @Override
    FrameSource source() {
      return open(new PngFile(61, 150, 0, 2, (x, y, c) -> x + y & 3));
    }

    @Override
    double expected(int x, int y, int channel) {
      return x + y & 3;
    }

    @Test
    void fullScaleIsThree() {
      assertThat(source().info().fullScale()).isEqualTo(3);
      assertThat(source().info().alpha()).isEqualTo(Alpha.NONE);
    }
  }

  /** PNG, third edition, 4.3: cICP before iCCP before sRGB before gAMA and cHRM. */
  @Test
  void theStrongestWordOnColourCounts() {
    byte[] linear = PlainProfile.rgb(PlainProfile.SRGB_CHROMATICITIES, 1);
    PngFile all =
        small()
            .chunk("cICP", new byte[] {12, 13, 0, 1})
            .chunk("iCCP", PngFile.profile(linear))
            .chunk("sRGB", new byte[1])
            .chunk("gAMA", PngFile.ints(100_000));
    assertThat(colour(all).space().named()).isEqualTo(NamedSpace.DISPLAY_P3);
    PngFile three =
        small()
            .chunk("iCCP", PngFile.profile(linear))
            .chunk("sRGB", new byte[1])
            .chunk("gAMA", PngFile.ints(50_000));
    assertThat(colour(three).space().curve(0).toLinear(0.25)).isEqualTo(0.25);
    PngFile two = small().chunk("sRGB", new byte[1]).chunk("gAMA", PngFile.ints(100_000));
    assertThat(colour(two).space().named()).isEqualTo(NamedSpace.SRGB);
    PngFile one = small().chunk("gAMA", PngFile.ints(50_000));
    assertThat(colour(one).space().curve(0).toLinear(0.5)).isEqualTo(0.25, within(1e-6));
    assertThat(colour(small()).notice())
        .isEqualTo("The frame has no colour profile and is read as sRGB.");
  }

  @Test
  void chromaticitiesBecomePrimaries() {
    // Display P3: D65 and the primaries of SMPTE EG 432-1, in 100,000ths.
    int[] xy = {31270, 32900, 68000, 32000, 26500, 69000, 15000, 6000};
    PngFile file = small().chunk("gAMA", PngFile.ints(45_455)).chunk("cHRM", PngFile.ints(xy));
    double[] matrix =
        ColourSpace.matrix(colour(file).space(), ColourSpace.of(NamedSpace.DISPLAY_P3));
    for (int i = 0; i < 9; i++) {
      // The profile on the way holds 16 fractional bits: 2^-17 each, times the inverse's gain of 4.
      assertThat(matrix[i]).isEqualTo(i % 4 == 0 ? 1 : 0, within(1e-4));
    }
  }

  @Test
  void whatIsNotUnderstoodIsNoticed() {
    PngFile unknown = small().chunk("cICP", new byte[] {9, 16, 0, 1});
    assertThat(open(unknown).info().notices())
        .containsExactly("The PNG's colour code (cICP 9, 16, 0, 1) is not known and was not used.");
    PngFile broken = small().chunk("iCCP", new byte[] {'x', 0, 0, 1, 2, 3});
    assertThat(open(broken).info().notices())
        .containsExactly("The embedded colour profile is damaged and was not used.");
  }
}
