package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.DecodeTable;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Rounding to 8 bits, plain and with blue noise. */
class RoundingTest {
  private static final int SIDE = DitherRanks.SIDE;

  @TempDir Path folder;

  /**
   * What a whole code may be off by before it is rounded: the curve's promise of 0.02 codes of 16
   * bits, and half the spacing of floats below 256 for product and sum.
   */
  private static final double OFF = 0.02 * 255 / 65535 + 2 * 0x1p-17;

  /** A square of one encoded value as its codes, row by row. */
  private static int[] square(NamedSpace space, float linear, Rounding rounding) {
    ColourSpace working = ColourSpace.of(space);
    OutputColour colour = OutputColour.of(working, space, 8);
    int[] codes = new int[SIDE * SIDE * 3];
    short[] row = new short[SIDE * 3];
    for (int y = 0; y < SIDE; y++) {
      float[][] rgb = new float[3][SIDE];
      for (float[] channel : rgb) {
        Arrays.fill(channel, linear);
      }
      colour.codes(rgb[0], rgb[1], rgb[2], SIDE, rounding.row(y), row);
      for (int i = 0; i < row.length; i++) {
        codes[y * row.length + i] = row[i] & 0xFFFF;
      }
    }
    return codes;
  }

  private static float linear(double code) {
    return (float) ColourSpace.of(NamedSpace.SRGB).curve(0).toLinear(code / 255);
  }

  @Test
  void theNearestIsAHalf() {
    for (int y = -1; y < 70; y++) {
      assertThat(Rounding.NEAREST.row(y)).hasSize(SIDE).containsOnly(0.5f);
    }
  }

  @Test
  void ditherTakesEachStepOnce() {
    Set<Float> seen = new HashSet<>();
    for (int y = 0; y < SIDE; y++) {
      for (float r : Rounding.DITHERED.row(y)) {
        assertThat(r * 8192 % 2).isEqualTo(1);
        assertThat(seen.add(r)).isTrue();
      }
    }
    assertThat(seen).hasSize(4096).contains(1 / 8192f, 8191 / 8192f);
    assertThat(Rounding.DITHERED.row(64 + 5)).isSameAs(Rounding.DITHERED.row(5));
  }

  /** Check-values 10.4: all 256 codes through linear float come back; with dither too. */
  @Tag("bits")
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void aCodeStaysACodeEverywhere(NamedSpace space) {
    float[] linear = DecodeTable.of(ColourSpace.of(space).curve(0), 256);
    for (int code = 0; code < 256; code++) {
      int expected = code;
      assertThat(Arrays.stream(square(space, linear[code], Rounding.DITHERED)))
          .as("code %d", code)
          .allMatch(seen -> seen == expected);
    }
  }

  /** The share of pixels that take the next code is the value's own fraction, to 1/4096. */
  @Test
  void theMeanOfASquareIsTheValue() {
    double worstPlain = 0;
    for (double value = 0; value <= 255; value += 1.37) {
      int[] codes = square(NamedSpace.SRGB, linear(value), Rounding.DITHERED);
      double mean = Arrays.stream(codes).average().orElseThrow();
      assertThat(mean).as("%s", value).isBetween(value - 1 / 4096.0, value + 1 / 4096.0);
      assertThat(
              Arrays.stream(codes).max().orElseThrow() - Arrays.stream(codes).min().orElseThrow())
          .isLessThanOrEqualTo(1);
      double plain = square(NamedSpace.SRGB, linear(value), Rounding.NEAREST)[0];
      worstPlain = Math.max(worstPlain, Math.abs(plain - value));
    }
    assertThat(worstPlain).as("without dither it is not").isGreaterThan(0.4);
  }

  @Test
  void aGreyStaysGrey() {
    int[] codes = square(NamedSpace.SRGB, linear(100.4), Rounding.DITHERED);
    for (int i = 0; i < codes.length; i += 3) {
      assertThat(codes[i + 1]).isEqualTo(codes[i]);
      assertThat(codes[i + 2]).isEqualTo(codes[i]);
    }
  }

  /** The grain lies where it lies in the file, however the file is cut into bands. */
  @Tag("bits")
  @ParameterizedTest
  @EnumSource(names = {"TIFF", "PNG"})
  void bandsMakeNoDifference(Format format) {
    TestPicture fine = TestPicture.noisy(70, 150, 16, NamedSpace.SRGB, 4);
    TestPicture shape = TestPicture.noisy(70, 150, 8, NamedSpace.SRGB, 4);
    SinkSpec plain = Specs.of(folder, format, Compress.LZW, shape);
    fine.deliver(plain);
    int[] undithered = Readers.own(plain.target());
    fine.deliver(Specs.dithered(plain, 200));
    int[] whole = Readers.own(plain.target());
    assertThat(whole).isNotEqualTo(undithered);
    for (int rows : new int[] {1, 7, 64}) {
      fine.deliver(Specs.dithered(plain, rows));
      assertThat(Readers.own(plain.target())).as("bands of %d", rows).isEqualTo(whole);
    }
  }

  /** The formula in double, at 4096 places and values between codes. */
  @Test
  void agreesWithTheFormula() {
    TransferCurve curve = ColourSpace.of(NamedSpace.SRGB).curve(0);
    short[] ranks = DitherRanks.read();
    for (double value : new double[] {-3, 0, 0.1, 7.3, 63.9, 128.5, 200.01, 254.6, 255, 260}) {
      float linear = linear(value);
      double code = Math.max(0, Math.min(255, curve.toEncoded(linear) * 255));
      int[] codes = square(NamedSpace.SRGB, linear, Rounding.DITHERED);
      for (int i = 0; i < ranks.length; i++) {
        double v = code + 0.5 + ((ranks[i] + 0.5) / 4096 - 0.5);
        assertThat(codes[3 * i]).isBetween((int) Math.floor(v - OFF), (int) Math.floor(v + OFF));
      }
    }
  }

  /**
   * A sky that brightens by two codes over 512 columns. Without dither it has three bands; with it
   * every column of 16 × 16 pixels is brighter than the one before. Means of so few pixels stray:
   * of 256 blue samples by less than a hundredth of a code, where a step is a sixteenth.
   */
  @Test
  void aSlowSkyHasNoBands() {
    ColourSpace working = ColourSpace.of(NamedSpace.SRGB);
    OutputColour colour = OutputColour.of(working, NamedSpace.SRGB, 8);
    double[] plain = new double[32];
    double[] dithered = new double[32];
    for (int y = 0; y < 16; y++) {
      addRow(colour, Rounding.NEAREST.row(y), plain);
      addRow(colour, Rounding.DITHERED.row(y), dithered);
    }
    assertThat(Arrays.stream(plain).distinct().count()).isLessThanOrEqualTo(5);
    for (int i = 1; i < dithered.length; i++) {
      double step = dithered[i] - dithered[i - 1];
      assertThat(step).as("column %d", i).isBetween(0.25 / 16, 1.75 / 16);
    }
  }

  private static void addRow(OutputColour colour, float[] rounding, double[] means) {
    float[][] rgb = new float[3][512];
    for (float[] channel : rgb) {
      for (int x = 0; x < 512; x++) {
        channel[x] = linear(60 + 2.0 * (x + 0.5) / 512);
      }
    }
    short[] codes = new short[3 * 512];
    colour.codes(rgb[0], rgb[1], rgb[2], 512, rounding, codes);
    for (int x = 0; x < 512; x++) {
      means[x / 16] += codes[3 * x] / 256.0;
    }
  }
}
