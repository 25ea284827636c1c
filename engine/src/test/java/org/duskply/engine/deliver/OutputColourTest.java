package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.Stream;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.DecodeTable;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class OutputColourTest {
  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);

  static Stream<Arguments> spacesAndDepths() {
    return Stream.of(NamedSpace.values())
        .flatMap(s -> Stream.of(Arguments.of(s, 8), Arguments.of(s, 16)));
  }

  private static short[] codes(OutputColour out, float[]... rgb) {
    short[] codes = new short[3 * rgb[0].length];
    out.codes(
        rgb[0].clone(),
        rgb[1].clone(),
        rgb[2].clone(),
        rgb[0].length,
        Rounding.NEAREST.row(0),
        codes);
    return codes;
  }

  private static int clipped(OutputColour out, float r, float g, float b) {
    float[] nearest = Rounding.NEAREST.row(0);
    return out.codes(new float[] {r}, new float[] {g}, new float[] {b}, 1, nearest, new short[3]);
  }

  private static int grey(OutputColour out, float v) {
    return codes(out, new float[] {v}, new float[] {v}, new float[] {v})[1] & 0xFFFF;
  }

  @Tag("bits")
  @ParameterizedTest
  @MethodSource("spacesAndDepths")
  void everyGreyComesBack(NamedSpace space, int depth) {
    ColourSpace working = ColourSpace.of(space);
    float[] linear = DecodeTable.of(working.curve(0), 1 << depth);
    short[] codes = codes(OutputColour.of(working, space, depth), linear, linear, linear);
    for (int i = 0; i < codes.length; i++) {
      assertThat(codes[i] & 0xFFFF).as("sample %d", i).isEqualTo(i / 3);
    }
  }

  @ParameterizedTest
  @MethodSource("spacesAndDepths")
  void anyColourComesBack(NamedSpace space, int depth) {
    ColourSpace working = ColourSpace.of(space);
    float[] linear = DecodeTable.of(working.curve(0), 1 << depth);
    Random random = new Random(7);
    int count = 100_000;
    short[] expected = new short[3 * count];
    float[][] rgb = new float[3][count];
    for (int i = 0; i < expected.length; i++) {
      int code = random.nextInt(linear.length);
      expected[i] = (short) code;
      rgb[i % 3][i / 3] = linear[code];
    }
    assertThat(codes(OutputColour.of(working, space, depth), rgb)).isEqualTo(expected);
  }

  /**
   * Conversion vectors computed with numpy, a colour library and LittleCMS (check-values 2.8): sRGB
   * in, another space's encoded values out. What the kernel may differ by: half a code, the seven
   * digits of the vector, and the matrix in float, which the curve magnifies near 0.
   */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.5, 0.5, DISPLAY_P3, 0.5, 0.5, 0.5",
    "1, 0, 0, DISPLAY_P3, 0.9174876, 0.2002868, 0.1385606",
    "0, 1, 0, DISPLAY_P3, 0.4584016, 0.9852646, 0.2982947",
    "0, 0, 1, DISPLAY_P3, 0, 0, 0.959588",
    "0.2, 0.6, 0.4, DISPLAY_P3, 0.3204606, 0.5918107, 0.4163364",
    "0.02, 0.01, 0.015, DISPLAY_P3, 0.0182246, 0.0103319, 0.0147234",
    "0.5, 0.5, 0.5, A98_RGB, 0.4961037, 0.4961037, 0.4961037",
    "1, 0, 0, A98_RGB, 0.8585916, 0, 0",
    "0, 1, 0, A98_RGB, 0.5649723, 1, 0.2344238",
    "0.9, 0.45, 0.1, A98_RGB, 0.7997259, 0.4475356, 0.1552669",
    "0.02, 0.01, 0.015, A98_RGB, 0.0491839, 0.0384846, 0.0459864",
    "1, 1, 1, PROPHOTO_RGB, 1, 1, 1",
    "1, 0, 0, PROPHOTO_RGB, 0.7022481, 0.2757205, 0.1035477",
    "0.05, 0.1, 0.3, PROPHOTO_RGB, 0.0994324, 0.0824762, 0.2183411",
    "0.02, 0.01, 0.015, PROPHOTO_RGB, 0.0198088, 0.0137764, 0.0179518"
  })
  void publishedVectors(
      double r, double g, double b, NamedSpace target, double r2, double g2, double b2) {
    TransferCurve in = SRGB.curve(0);
    float[][] rgb = {{(float) in.toLinear(r)}, {(float) in.toLinear(g)}, {(float) in.toLinear(b)}};
    short[] codes = codes(OutputColour.of(SRGB, target, 16), rgb);
    double[] expected = {r2, g2, b2};
    TransferCurve curve = ColourSpace.of(target).curve(0);
    for (int c = 0; c < 3; c++) {
      double linear = curve.toLinear(expected[c]);
      double magnified = curve.toEncoded(linear + 0x1p-19) - expected[c];
      assertThat((codes[c] & 0xFFFF) / 65535.0)
          .as("channel %d", c)
          .isBetween(
              expected[c] - 0.5 / 65535 - 1e-7 - magnified,
              expected[c] + 0.5 / 65535 + 1e-7 + magnified);
    }
  }

  /**
   * Held to the same formula in double, at values in and out of range, for every pair of spaces.
   */
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void agreesWithTheFormula(NamedSpace target) {
    for (NamedSpace source : NamedSpace.values()) {
      ColourSpace working = ColourSpace.of(source);
      double[] m = ColourSpace.matrix(working, ColourSpace.of(target));
      TransferCurve curve = ColourSpace.of(target).curve(0);
      Random random = new Random(source.ordinal());
      int count = 2_000;
      float[][] rgb = new float[3][count];
      for (int i = 0; i < 3 * count; i++) {
        rgb[i % 3][i / 3] = (float) (StrictMath.pow(random.nextDouble(), 3) * 1.3 - 0.1);
      }
      short[] codes = codes(OutputColour.of(working, target, 16), rgb);
      for (int i = 0; i < 3 * count; i++) {
        int p = i / 3;
        int row = 3 * (i % 3);
        double x = m[row] * rgb[0][p] + m[row + 1] * rgb[1][p] + m[row + 2] * rgb[2][p];
        // The matrix: 28 roundings of values up to 1.2, see OutputColour; none where it is left
        // out.
        double off = source == target ? 0 : 1.2 * 28 * 0x1p-24;
        // The curve: its own promise of 0.02 codes, and half the spacing of floats below 65536
        // twice, for the product and the sum.
        double own = 0.02 + 2 * 0x1p-9;
        assertThat(codes[i] & 0xFFFF)
            .as("%s → %s, pixel %d", source, target, p)
            .isBetween(code(curve, x - off, -own), code(curve, x + off, own));
      }
    }
  }

  private static int code(TransferCurve curve, double linear, double more) {
    double held = Math.max(0, Math.min(1, linear));
    double code = StrictMath.floor(curve.toEncoded(held) * 65535 + 0.5 + more);
    return (int) Math.max(0, Math.min(65535, code));
  }

  @Test
  void edges() {
    OutputColour out = OutputColour.of(SRGB, NamedSpace.SRGB, 16);
    assertThat(grey(out, 0f)).isEqualTo(0);
    assertThat(grey(out, -0f)).isEqualTo(0);
    assertThat(grey(out, Float.MIN_VALUE)).isEqualTo(0);
    assertThat(grey(out, -1e-30f)).isEqualTo(0);
    assertThat(grey(out, -65504f)).isEqualTo(0);
    assertThat(grey(out, Float.NEGATIVE_INFINITY)).isEqualTo(0);
    assertThat(grey(out, Float.NaN)).isEqualTo(0);
    assertThat(grey(out, Math.nextDown(1f))).isEqualTo(65535);
    assertThat(grey(out, 1f)).isEqualTo(65535);
    assertThat(grey(out, Math.nextUp(1f))).isEqualTo(65535);
    assertThat(grey(out, 65504f)).isEqualTo(65535);
    assertThat(grey(out, Float.POSITIVE_INFINITY)).isEqualTo(65535);
  }

  /** ½ code below 0 of sRGB is ½/maximum/12.92 in linear light (IEC 61966-2-1). */
  @Test
  void countsPixelsThatAreOutsideByMoreThanHalfACode() {
    OutputColour out8 = OutputColour.of(SRGB, NamedSpace.SRGB, 8);
    float half = (float) (0.5 / 255 / 12.92);
    assertThat(clipped(out8, 0.5f, -half * 0.999f, 0.5f)).isEqualTo(0);
    assertThat(clipped(out8, 0.5f, -half * 1.001f, 0.5f)).isEqualTo(1);
    float over = (float) StrictMath.pow((1 + 0.5 / 255 + 0.055) / 1.055, 2.4);
    assertThat(clipped(out8, over * 0.99999f, 0.5f, 0.5f)).isEqualTo(0);
    assertThat(clipped(out8, over * 1.00001f, 0.5f, 0.5f)).isEqualTo(1);
    assertThat(clipped(out8, 9, -9, 9)).as("a pixel counts once").isEqualTo(1);
    assertThat(clipped(out8, Float.NaN, 0, 0)).isEqualTo(0);
    OutputColour power = OutputColour.of(SRGB, NamedSpace.A98_RGB, 16);
    assertThat(clipped(power, 1, 0, 0))
        .as("rounding of the matrix at an edge of both spaces")
        .isEqualTo(0);
  }

  /** Green of P3 lies outside sRGB (check-values 2.8), white of every space inside every other. */
  @Test
  void countsColoursOutsideTheTarget() {
    ColourSpace p3 = ColourSpace.of(NamedSpace.DISPLAY_P3);
    OutputColour out = OutputColour.of(p3, NamedSpace.SRGB, 8);
    assertThat(clipped(out, 0, 1, 0)).isEqualTo(1);
    short[] codes = codes(out, new float[] {0}, new float[] {1}, new float[] {0});
    assertThat(codes).containsExactly(0, 255, 0);
    for (NamedSpace source : NamedSpace.values()) {
      for (NamedSpace target : NamedSpace.values()) {
        OutputColour any = OutputColour.of(ColourSpace.of(source), target, 16);
        assertThat(clipped(any, 1, 1, 1)).as("%s → %s", source, target).isEqualTo(0);
      }
    }
  }
}
