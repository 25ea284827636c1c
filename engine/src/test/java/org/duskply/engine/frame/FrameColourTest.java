package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccReader;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which word on a frame's colours counts, and what is said about it. */
class FrameColourTest {
  private static FrameInfo info(
      int channels, Samples.Kind kind, byte @Nullable [] profile, @Nullable NamedSpace named) {
    return new FrameInfo(
        4, 4, channels, Alpha.NONE, kind, 255, profile, named, Exif.NONE, List.of());
  }

  private static FrameColour rgb(
      byte @Nullable [] profile, @Nullable NamedSpace named, @Nullable NamedSpace recipe) {
    return FrameColour.of("pop.tif", info(3, Samples.Kind.BYTES, profile, named), recipe);
  }

  private static byte[] p3() {
    return IccWriter.profile(NamedSpace.DISPLAY_P3);
  }

  @Test
  void theRecipeBeforeTheProfileBeforeTheNameBeforeSrgb() {
    assertThat(rgb(p3(), NamedSpace.SRGB, NamedSpace.A98_RGB).space().named())
        .isEqualTo(NamedSpace.A98_RGB);
    FrameColour embedded = rgb(p3(), NamedSpace.SRGB, null);
    assertThat(embedded.space().named()).isEqualTo(NamedSpace.DISPLAY_P3);
    assertThat(embedded.notice()).isNull();
    assertThat(rgb(null, NamedSpace.REC2020, null).space().named()).isEqualTo(NamedSpace.REC2020);
    FrameColour untagged = rgb(null, null, null);
    assertThat(untagged.space()).isSameAs(ColourSpace.of(NamedSpace.SRGB));
    assertThat(untagged.notice()).isEqualTo("The frame has no colour profile and is read as sRGB.");
  }

  @Test
  void aBrokenProfileIsLeftOutAloud() {
    FrameColour colour = rgb(new byte[200], null, null);
    assertThat(colour.space().named()).isEqualTo(NamedSpace.SRGB);
    assertThat(colour.notice()).contains("It was not used. The frame is read as sRGB.");
  }

  @Test
  void aProfileOfAnotherKindOfColourIsLeftOutAloud() {
    byte[] cmyk = p3();
    System.arraycopy("CMYK".getBytes(StandardCharsets.US_ASCII), 0, cmyk, 16, 4);
    assertThat(rgb(cmyk, null, null).notice())
        .isEqualTo(
            "The colour profile describes CMYK, not RGB or grey. It was not used. The frame is"
                + " read as sRGB.");
    assertThat(rgb(PlainProfile.grey(2.2), null, null).notice())
        .isEqualTo(
            "The embedded colour profile is for grey pictures and was not used. The frame is read"
                + " as sRGB.");
  }

  @Test
  void aProfileOfTablesIsRefusedUnlessTheRecipeSaysBetter() {
    byte[] tables = p3();
    System.arraycopy("Lab ".getBytes(StandardCharsets.US_ASCII), 0, tables, 20, 4);
    assertThatThrownBy(() -> rgb(tables, null, null))
        .isInstanceOf(FrameException.class)
        .hasMessage(
            "pop.tif has a colour profile of look-up tables, which this version cannot follow;"
                + " export it with a profile of primaries and curves, such as sRGB, or give the"
                + " frame's profile in the recipe.");
    assertThat(rgb(tables, null, NamedSpace.SRGB).space().named()).isEqualTo(NamedSpace.SRGB);
  }

  @Test
  void floatsWithoutAProfileAreLinear() {
    FrameColour colour = FrameColour.of("hdr.tif", info(3, Samples.Kind.FLOATS, null, null), null);
    assertThat(colour.space().curve(0).toLinear(0.3)).isEqualTo(0.3);
    assertThat(colour.space().samePrimaries(ColourSpace.of(NamedSpace.SRGB))).isTrue();
    assertThat(colour.notice()).contains("read as linear light");
  }

  /** A linear profile in the primaries of sRGB needs no matrix to those of sRGB, nearly. */
  @Test
  void theMadeProfileIsSound() {
    byte[] profile = PlainProfile.rgb(PlainProfile.SRGB_CHROMATICITIES, 1);
    assertThat(ByteBuffer.wrap(profile).getInt(0)).isEqualTo(profile.length);
    double[] m = ColourSpace.matrix(IccReader.read(profile), ColourSpace.of(NamedSpace.SRGB));
    for (int i = 0; i < 9; i++) {
      assertThat(m[i]).isCloseTo(i % 4 == 0 ? 1 : 0, org.assertj.core.data.Offset.offset(3e-4));
    }
  }
}
