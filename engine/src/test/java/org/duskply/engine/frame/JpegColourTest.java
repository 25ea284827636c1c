package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.testing.JpegBytes;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;

/**
 * What the components of a JPEG mean: JFIF, the APP14 marker, inks, and a profile in pieces.
 * Pictures are flat, so that coding changes a value by 1 at most.
 */
class JpegColourTest {
  private static JpegBytes flat(int... components) {
    return JpegBytes.raw(16, 16, components.length, (x, y, c) -> components[c]);
  }

  private static FrameSource open(JpegBytes file) {
    return FrameSources.open(Disk.file("made.jpg", file.bytes()));
  }

  private static int[] middle(JpegBytes file) {
    FrameSource source = open(file);
    Samples s = source.reader().read(0);
    int[] values = new int[s.channels()];
    for (int c = 0; c < values.length; c++) {
      values[c] = (int) SamplesText.value(s, 8, 8, c);
    }
    return values;
  }

  private static void near(int[] got, int... wanted) {
    assertThat(got).hasSameSizeAs(wanted);
    for (int c = 0; c < wanted.length; c++) {
      // One for the coding of each of luma and chroma, times at most 1.772.
      assertThat(got[c]).isBetween(wanted[c] - 3, wanted[c] + 3);
    }
  }

  /** JFIF 1.02: Y 76, Cb 85, Cr 255 is pure red. */
  @Test
  void threeComponents() {
    near(middle(flat(76, 85, 255).jfif()), 254, 0, 0);
    near(middle(flat(76, 85, 255).adobe(1)), 254, 0, 0);
    near(middle(flat(76, 85, 255).adobe(0)), 76, 85, 255);
  }

  /**
   * Common practice, no source: inks stand as they are without the APP14 marker, turned round with
   * it, and transform 2 turns the first three into luma and chroma before.
   */
  @Test
  void fourComponents() {
    near(middle(flat(10, 60, 110, 160)), 10, 60, 110, 160);
    near(middle(flat(10, 60, 110, 160).adobe(0)), 245, 195, 145, 95);
    // Luma and chroma of the stored "RGB" (245, 195, 145): 204.3, 94.5, 157.0 (JFIF 1.02), which
    // writers of that marker make of turned inks; the inks are then 245, 195, 145.
    near(middle(flat(204, 95, 157, 160).adobe(2)), 245, 195, 145, 95);
    assertThat(open(flat(1, 2, 3, 4)).info().colours()).isEqualTo(4);
  }

  @Test
  void aProfileInPieces() {
    byte[] profile = IccWriter.profile(NamedSpace.DISPLAY_P3);
    byte[] first = Arrays.copyOfRange(profile, 0, 100);
    byte[] second = Arrays.copyOfRange(profile, 100, 300);
    byte[] third = Arrays.copyOfRange(profile, 300, profile.length);
    JpegBytes whole = flat(1, 2, 3).jfif();
    whole.profile(3, 3, third).profile(1, 3, first).profile(2, 3, second);
    assertThat(open(whole).info().profile()).isEqualTo(profile);
    badPieces(flat(1, 2, 3).jfif().profile(1, 3, first).profile(3, 3, third));
    badPieces(flat(1, 2, 3).profile(1, 2, first).profile(1, 2, first));
    badPieces(flat(1, 2, 3).profile(0, 1, profile));
    badPieces(flat(1, 2, 3).profile(1, 1, first).profile(2, 2, second));
  }

  private static void badPieces(JpegBytes file) {
    FrameInfo info = open(file).info();
    assertThat(info.profile()).isNull();
    assertThat(info.notices())
        .containsExactly(
            "The pieces of the embedded colour profile do not fit together; it was not used.");
    assertThat(middle(file)).hasSize(3);
  }

  /** A profile for CMYK in a file of RGB, and the reverse. */
  @Test
  void aProfileThatDoesNotFitThePixels() {
    FrameInfo rgb = open(flat(76, 85, 255).jfif().profile(1, 1, ProfileOfTables.of("CMYK"))).info();
    assertThat(FrameColour.of("made.jpg", rgb, null).notice())
        .isEqualTo(
            "The embedded colour profile is for CMYK pictures and was not used. The frame is read"
                + " as sRGB.");
    FrameInfo inks =
        open(flat(1, 2, 3, 4).profile(1, 1, IccWriter.profile(NamedSpace.SRGB))).info();
    assertThatThrownBy(() -> FrameColour.of("made.jpg", inks, null))
        .hasMessage(
            "made.jpg holds CMYK colours and its colour profile is not for CMYK, so that nothing"
                + " says how they look; save it as RGB.");
  }

  /** Paper without ink is white, and all inks together are black, through the made profile. */
  @Test
  void inksBecomeLight() {
    assertThat(light(flat(0, 0, 0, 0))).isBetween(0.999f, 1.001f);
    assertThat(light(flat(255, 255, 255, 255))).isBetween(-0.001f, 0.001f);
    assertThat(light(flat(255, 255, 255, 255).adobe(0))).isBetween(0.999f, 1.001f);
  }

  private static float light(JpegBytes file) {
    FrameSource source = open(file.profile(1, 1, ProfileOfTables.of("CMYK")));
    FrameColour colour = FrameColour.of("made.jpg", source.info(), null);
    Lineariser lineariser = Lineariser.prepare(source.info(), colour.space(), colour.space(), 0);
    float[][] out = new float[3][16];
    lineariser.row(source.reader().read(0), 3, 0, 16, out[0], out[1], out[2], null, 0);
    assertThat(out[0][5]).isCloseTo(out[1][5], org.assertj.core.data.Offset.offset(0.01f));
    return out[1][5];
  }

  /** A record that lies about itself costs nothing but itself: one notice, and the pixels. */
  @Test
  void aBrokenCameraRecord() {
    byte[] lies = {
      'M',
      'M',
      0,
      42,
      0,
      0,
      0,
      8,
      0,
      2, // a directory of two entries
      (byte) 0x82,
      (byte) 0x9a,
      0,
      5,
      0x7f,
      (byte) 0xff,
      (byte) 0xff,
      (byte) 0xff,
      0x7f,
      0,
      0,
      8,
      (byte) 0x87,
      0x69,
      0,
      4,
      0,
      0,
      0,
      1,
      0,
      0,
      0,
      8, // its camera directory is itself
      0,
      0,
      0,
      8 // and so is the next one
    };
    FrameInfo info = open(flat(76, 85, 255).jfif().exif(lies)).info();
    assertThat(info.notices())
        .containsExactly("Part of the camera record (EXIF) is damaged and was not used.");
    assertThat(info.exif().exposureSeconds()).isNull();
    near(middle(flat(76, 85, 255).jfif().exif(new byte[] {'M'})), 254, 0, 0);
  }
}
