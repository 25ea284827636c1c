package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccReader;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.ReadsAs;
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
    assertThat(rgb(ProfileOfTables.of("CMYK"), null, null).notice())
        .isEqualTo(
            "The embedded colour profile is for CMYK pictures and was not used. The frame is read"
                + " as sRGB.");
    FrameInfo grey = info(1, Samples.Kind.BYTES, ProfileOfTables.of("RGB "), null);
    assertThat(FrameColour.of("pop.tif", grey, null).notice())
        .isEqualTo(
            "The embedded colour profile is for RGB pictures and was not used. The frame is read"
                + " as sRGB.");
    assertThat(rgb(PlainProfile.grey(2.2), null, null).notice())
        .isEqualTo(
            "The embedded colour profile is for grey pictures and was not used. The frame is read"
                + " as sRGB.");
  }

  @Test
  void aProfileOfTablesIsFollowedAloud() {
    FrameColour colour = rgb(ProfileOfTables.of("RGB "), null, null);
    assertThat(colour.space().tables()).isNotNull();
    assertThat(colour.reason())
        .isEqualTo("Its own colour profile is followed (embedded profile of look-up tables).");
    assertThat(colour.notice()).contains("works by look-up tables");
    assertThat(rgb(ProfileOfTables.of("RGB "), null, NamedSpace.SRGB).space().named())
        .isEqualTo(NamedSpace.SRGB);
    assertThatThrownBy(
            () ->
                FrameColour.of(
                    "pop.tif",
                    info(3, Samples.Kind.BYTES, ProfileOfTables.of("RGB "), null),
                    null,
                    ReadsAs.LINEAR))
        .isInstanceOf(FrameException.class)
        .hasMessage(
            "pop.tif has a colour profile of look-up tables, which knows no linear light; give the"
                + " frame's profile in the recipe as well.");
  }

  private static FrameColour inks(byte @Nullable [] profile, @Nullable NamedSpace recipe) {
    return FrameColour.of("ad.tif", info(4, Samples.Kind.BYTES, profile, null), recipe);
  }

  /** CMYK numbers are amounts of ink on some paper: without their profile they are no colours. */
  @Test
  void inksNeedTheirProfile() {
    FrameColour colour = inks(ProfileOfTables.of("CMYK"), null);
    assertThat(colour.space().tables()).isNotNull();
    assertThat(colour.notice()).contains("CMYK");
    String end = ", so that nothing says how they look; save it as RGB.";
    assertThatThrownBy(() -> inks(null, null))
        .hasMessage("ad.tif holds CMYK colours and it has no colour profile" + end);
    assertThatThrownBy(() -> inks(p3(), null))
        .hasMessage("ad.tif holds CMYK colours and its colour profile is not for CMYK" + end);
    assertThatThrownBy(() -> inks(new byte[300], null))
        .hasMessage("ad.tif holds CMYK colours and its colour profile is broken" + end);
    assertThatThrownBy(() -> inks(ProfileOfTables.of("CMYK"), NamedSpace.SRGB))
        .hasMessage(
            "ad.tif holds CMYK colours, which no profile for RGB can describe; save it as RGB.");
  }

  /** The recipe's word on floats and on whole numbers goes before the rule. */
  @Test
  void valuesAreReadAsTheRecipeSays() {
    FrameInfo floats = info(3, Samples.Kind.FLOATS, null, null);
    FrameColour encoded = FrameColour.of("hdr.tif", floats, null, ReadsAs.ENCODED);
    assertThat(encoded.space()).isSameAs(ColourSpace.of(NamedSpace.SRGB));
    FrameInfo tagged = info(3, Samples.Kind.FLOATS, p3(), null);
    assertThat(FrameColour.of("hdr.tif", tagged, null).space().named())
        .isEqualTo(NamedSpace.DISPLAY_P3);
    assertThat(FrameColour.of("hdr.tif", tagged, null).notice())
        .isEqualTo(
            "The frame holds floats and its colour profile has a tone curve: they are read through"
                + " that curve.");
    FrameColour linear = FrameColour.of("hdr.tif", tagged, null, ReadsAs.LINEAR);
    assertThat(linear.space().curve(0).toLinear(0.3)).isEqualTo(0.3);
    assertThat(linear.space().samePrimaries(ColourSpace.of(NamedSpace.DISPLAY_P3))).isTrue();
    assertThat(linear.notice()).isNull();
    FrameColour codes =
        FrameColour.of(
            "f.tif", info(3, Samples.Kind.SHORTS, null, null), NamedSpace.REC2020, ReadsAs.LINEAR);
    assertThat(codes.space().curve(0).toLinear(0.3)).isEqualTo(0.3);
    assertThat(codes.reason())
        .endsWith("The recipe reads its numbers as linear light, whatever the curve.");
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
