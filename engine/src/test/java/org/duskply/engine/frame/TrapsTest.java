package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.engine.testing.JpegBytes;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/**
 * Files on which readers of pictures are known to go wrong, each built here byte by byte, and the
 * light that must come out. Most were reported in public by users of such readers.
 */
class TrapsTest {
  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);

  /** A frame as linear light in the primaries of sRGB: red, green, blue, coverage. */
  private static float[][] light(Path file) {
    FrameSource source = FrameSources.open(file);
    FrameInfo info = source.info();
    FrameColour colour = FrameColour.of(file.getFileName().toString(), info, null);
    Lineariser lineariser = Lineariser.prepare(info, colour.space(), SRGB, 0);
    float[][] out = new float[4][info.width() * info.height()];
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        Samples s = reader.read(u);
        for (int y = s.area().top(); y < s.area().bottom(); y++) {
          int at = y * info.width();
          lineariser.row(s, y, 0, info.width(), out[0], out[1], out[2], out[3], at);
        }
      }
    }
    return out;
  }

  private static TiffFile tagged(TiffFile file, byte[] profile) {
    return file.raw(34675, 7, profile.length, profile);
  }

  /**
   * A ramp of all 16-bit codes in a wide space keeps its steps, and what lies outside of a narrower
   * one keeps its place outside: pure red of P3 has −0.042 of green in sRGB (CSS Color 4, sample
   * matrices).
   */
  @Test
  void aWideSpaceIsNeitherNarrowedNorCutToEightBits() {
    byte[] p3 = IccWriter.profile(NamedSpace.DISPLAY_P3);
    TiffFile ramp = new TiffFile(256, 256, 3, 16, (x, y, c) -> y * 256 + x);
    float[][] grey = light(Disk.file("ramp.tif", tagged(ramp, p3).bytes()));
    Set<Float> levels = new HashSet<>();
    for (float v : grey[1]) {
      levels.add(v);
    }
    assertThat(levels).hasSize(65536);
    TiffFile red = new TiffFile(1, 1, 3, 16, (x, y, c) -> c == 0 ? 65535 : 0);
    float[][] out = light(Disk.file("red.tif", tagged(red, p3).bytes()));
    assertThat(out[0][0]).isCloseTo(1.2249f, within(1e-4f));
    assertThat(out[1][0]).isCloseTo(-0.0420f, within(1e-4f));
  }

  /** The same in a JPEG, whose decoders like to turn colours into sRGB on the way. */
  @Test
  void aWideSpaceInAJpeg() {
    byte[] p3 = IccWriter.profile(NamedSpace.DISPLAY_P3);
    JpegBytes red = JpegBytes.raw(8, 8, 3, (x, y, c) -> c == 0 ? 255 : 0).adobe(0);
    float[][] out = light(Disk.file("red.jpg", red.profile(1, 1, p3).bytes()));
    assertThat(out[1][9]).isBetween(-0.043f, -0.038f);
  }

  /** And in a PNG, whose decoders like to leave profiles and gamma aside. */
  @Test
  void aWideSpaceInAPng() {
    byte[] p3 = PngFile.profile(IccWriter.profile(NamedSpace.DISPLAY_P3));
    PngFile red = new PngFile(2, 2, 2, 16, (x, y, c) -> c == 0 ? 65535 : 0);
    float[][] out = light(Disk.file("red.png", red.chunk("iCCP", p3).bytes()));
    assertThat(out[1][0]).isCloseTo(-0.0420f, within(1e-4f));
  }

  /**
   * White at a quarter of coverage, stored as (64, 64, 64, 64): over black it gives 0.251 of light,
   * code 137, at 8 and at 16 bits. Divided after the curve it would be 0.05.
   */
  @Test
  void associatedAlphaAtBothDepths() {
    for (int bits : new int[] {8, 16}) {
      int code = bits == 8 ? 64 : 64 * 257;
      TiffFile file = new TiffFile(3, 3, 4, bits, (x, y, c) -> code).shorts(338, 1);
      Path path = Disk.file("alpha.tif", file.bytes());
      assertThat(FrameSources.open(path).info().alpha()).isEqualTo(Alpha.ASSOCIATED);
      float[][] out = light(path);
      float over = out[0][4] * out[3][4];
      assertThat(over).isCloseTo(64 / 255f, within(1e-6f));
      assertThat(Math.round(255 * SRGB.curve(0).toEncoded(over))).isEqualTo(137);
    }
  }

  /** An extra sample without a meaning is no alpha, behind inks neither. */
  @Test
  void extraSamplesWithoutAMeaning() {
    TiffFile rgb = new TiffFile(3, 3, 4, 16, (x, y, c) -> c == 3 ? 0 : 65535).shorts(338, 0);
    assertThat(light(Disk.file("extra.tif", rgb.bytes()))[0][0]).isEqualTo(1);
    TiffFile inks =
        new TiffFile(3, 3, 5, 8, (x, y, c) -> c == 4 ? 255 : 0).shorts(262, 5).shorts(338, 0);
    Path path = Disk.file("spot.tif", tagged(inks, ProfileOfTables.of("CMYK")).bytes());
    assertThat(FrameSources.open(path).info().alpha()).isEqualTo(Alpha.NONE);
    assertThat(light(path)[1][0]).isCloseTo(1, within(1e-4f));
  }

  /** Paper is white and full ink is black: nothing is turned round, at 8 and at 16 bits. */
  @Test
  void inksInATiff() {
    for (int bits : new int[] {8, 16}) {
      int full = (1 << bits) - 1;
      TiffFile file =
          new TiffFile(2, 1, 4, bits, (x, y, c) -> x * full).shorts(262, 5).compression(8);
      float[][] out = light(Disk.file("ink.tif", tagged(file, ProfileOfTables.of("CMYK")).bytes()));
      assertThat(out[1][0]).isCloseTo(1, within(1e-4f));
      assertThat(out[1][1]).isCloseTo(0, within(1e-4f));
    }
  }

  /** The next directory is the first one again. */
  @Test
  void aRingOfDirectories() {
    TiffFile file = new TiffFile(5, 5, 3, 8, (x, y, c) -> x + y);
    byte[] ring = file.bytes();
    ByteBuffer in = ByteBuffer.wrap(ring).order(ByteOrder.LITTLE_ENDIAN);
    int first = in.getInt(4);
    in.putInt(first + 2 + 12 * in.getShort(first), first);
    FrameSource source =
        Assertions.assertTimeoutPreemptively(
            Duration.ofSeconds(60), () -> FrameSources.open(Disk.file("ring.tif", ring)));
    assertThat(source.reader().read(0).bytes()[0]).isZero();
    assertThat(source.info().notices())
        .containsExactly("The file holds more than one picture; the first is used.");
  }

  /** 12-bit JPEG is told by its precision alone. */
  @Test
  void aTwelveBitJpeg() {
    byte[] file = JpegBytes.raw(8, 8, 1, (x, y, c) -> 90).bytes();
    for (int i = 2; i + 4 < file.length; i++) {
      if ((file[i] & 0xff) == 0xff && (file[i + 1] & 0xff) == 0xc0) {
        file[i + 4] = 12;
        break;
      }
    }
    assertThatThrownBy(() -> FrameSources.open(Disk.file("deep.jpg", file)))
        .hasMessage("deep.jpg is a 12-bit JPEG of a kind that is not read; save it as TIFF.");
  }

  @Test
  void logarithmicColours() {
    TiffFile file = new TiffFile(5, 5, 3, 16, (x, y, c) -> 1).shorts(262, 32845 - 65536);
    assertThatThrownBy(() -> FrameSources.open(Disk.file("log.tif", file.bytes())))
        .hasMessage(
            "log.tif holds LogLuv colours (tag 262, PhotometricInterpretation), which this version"
                + " does not read; save it as RGB.");
  }

  /** Deep and odd depths come out at the same brightness: full scale is 1. */
  @Test
  void theSameLightAtEveryDepth() {
    for (int bits : new int[] {2, 4, 8, 10, 12, 14, 16, 24, 32}) {
      long full = (1L << bits) - 1;
      TiffFile file = new TiffFile(4, 1, 3, bits, (x, y, c) -> (int) (full / 3 * x));
      float[][] out = light(Disk.file("depth" + bits + ".tif", file.bytes()));
      assertThat(out[0][3]).as("%d bits", bits).isEqualTo(1);
      assertThat((double) out[0][1])
          .as("%d bits", bits)
          .isCloseTo(SRGB.curve(0).toLinear(1 / 3.0), within(1.0 / full + 1e-5));
    }
  }

  /**
   * Floats are light itself; with a tone curve in their profile they are read through it, aloud.
   */
  @Test
  void floatsAreLight() {
    TiffFile file =
        new TiffFile(1, 1, 3, 32, (x, y, c) -> Float.floatToRawIntBits(18.75f))
            .shorts(339, 3, 3, 3);
    assertThat(light(Disk.file("float.tif", file.bytes()))[2][0]).isEqualTo(18.75f);
    TiffFile half =
        new TiffFile(1, 1, 3, 32, (x, y, c) -> Float.floatToRawIntBits(0.5f)).shorts(339, 3, 3, 3);
    byte[] srgb = IccWriter.profile(NamedSpace.SRGB);
    // IEC 61966-2-1: code 0.5 is 0.21404 of light.
    assertThat(light(Disk.file("bent.tif", tagged(half, srgb).bytes()))[0][0])
        .isCloseTo(0.21404f, within(1e-5f));
  }

  /** Every kind of picture under the name of another kind. */
  @Test
  void aNameDoesNotCount() {
    byte[] jpeg = JpegBytes.raw(8, 8, 1, (x, y, c) -> 90).bytes();
    byte[] tiff = new TiffFile(8, 8, 1, 8, (x, y, c) -> 90).bytes();
    byte[] png = new PngFile(8, 8, 0, 8, (x, y, c) -> 90).bytes();
    for (byte[] bytes : Arrays.asList(jpeg, tiff, png)) {
      for (String name : new String[] {"a.tif", "a.jpg", "a.png", "a"}) {
        Samples s = FrameSources.open(Disk.file(name, bytes)).reader().read(0);
        assertThat(SamplesText.value(s, 3, 3, 0)).isEqualTo(90);
      }
    }
  }
}
