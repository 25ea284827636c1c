package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.ColourBlendContract;
import org.duskply.engine.testing.Lcg;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The table of blend modes, and what binds modes together. */
class BlendsTest {
  private static float blend(Blend mode, float below, float frame) {
    return blend(mode, new float[] {below}, new float[] {frame})[0];
  }

  private static float[] blend(Blend mode, float[] below, float[] frame) {
    float[] out = new float[below.length];
    ((SeparableKernel) Blends.of(mode)).run(below, frame, out, 0, out.length);
    return out;
  }

  private static float[] colour(Blend mode, float[] below, float[] frame) {
    float[][] b = {{below[0]}, {below[1]}, {below[2]}};
    float[][] f = {{frame[0]}, {frame[1]}, {frame[2]}};
    float[][] out = new float[3][1];
    Blends.of(mode).run(b, f, out, 0, 1);
    return new float[] {out[0][0], out[1][0], out[2][0]};
  }

  private static float[] floats(String numbers) {
    String[] parts = numbers.trim().split(" +");
    float[] floats = new float[parts.length];
    for (int i = 0; i < parts.length; i++) {
      floats[i] = Float.parseFloat(parts[i]);
    }
    return floats;
  }

  private static double[] doubles(float[] floats) {
    double[] doubles = new double[floats.length];
    for (int i = 0; i < doubles.length; i++) {
      doubles[i] = floats[i];
    }
    return doubles;
  }

  private static float[] noise(long seed) {
    return new Lcg(seed).samples(4099, 0, 1);
  }

  private static float[] all(float value) {
    float[] all = new float[4099];
    Arrays.fill(all, value);
    return all;
  }

  @ParameterizedTest
  @EnumSource
  void everyModeHasAContract(Blend mode) throws ClassNotFoundException {
    String kernel = Blends.of(mode).getClass().getSimpleName();
    String test = kernel.replace("Kernel", "Test");
    Class<?> contract = Class.forName(getClass().getPackageName() + "." + test);
    Class<?> expected =
        BlendFormulas.ofColours(mode) ? ColourBlendContract.class : BlendKernelContract.class;
    assertThat(contract).isAssignableTo(expected);
  }

  /**
   * W3C Compositing and Blending 1, #blendingseparable: opaque values computed from its formulas
   * and with a general 2D graphics library; the last digits of color-burn and soft-light are
   * rounded.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          0    | 0    | 0      0      0     0    0    0   0          0     0          0    0
          0    | 1    | 0      1      0     0    1    0   0          1     0          1    1
          1    | 0    | 0      1      1     0    1    1   1          0     1          1    1
          1    | 1    | 1      1      1     1    1    1   1          1     1          0    0
          0.25 | 0.75 | 0.1875 0.8125 0.375 0.25 0.75 1   0          0.625 0.375      0.5  0.625
          0.75 | 0.25 | 0.1875 0.8125 0.625 0.25 0.75 1   0          0.375 0.65625    0.5  0.625
          0.5  | 0.5  | 0.25   0.75   0.5   0.5  0.5  1   0          0.5   0.5        0    0.5
          0.2  | 0.6  | 0.12   0.68   0.24  0.2  0.6  0.5 0          0.36  0.2496     0.4  0.56
          0.04 | 0.9  | 0.036  0.904  0.072 0.04 0.9  0.4 0          0.808 0.1214592  0.86 0.868
          0.8  | 0.9  | 0.72   0.98   0.96  0.8  0.9  1   0.77777778 0.96  0.87554175 0.1  0.26
          0.18 | 0.1  | 0.018  0.262  0.036 0.1  0.18 0.2 0          0.036 0.06192    0.08 0.244
          0.6  | 0.5  | 0.3    0.8    0.6   0.5  0.6  1   0.2        0.6   0.6        0.1  0.5
          """)
  void separableModesOfTheStandard(float b, float s, String results) {
    List<Blend> modes =
        List.of(
            Blend.MULTIPLY,
            Blend.SCREEN,
            Blend.OVERLAY,
            Blend.DARKEN,
            Blend.LIGHTEN,
            Blend.COLOR_DODGE,
            Blend.COLOR_BURN,
            Blend.HARD_LIGHT,
            Blend.SOFT_LIGHT,
            Blend.DIFFERENCE,
            Blend.EXCLUSION);
    double[] wanted =
        Arrays.stream(results.trim().split(" +")).mapToDouble(Double::parseDouble).toArray();
    for (int i = 0; i < wanted.length; i++) {
      // Both inputs rounded to float by up to 2⁻²⁵, which color-dodge makes at most 4 times as
      // much here (0.04/0.1²), three operations, and half of the eighth digit: 8·2⁻²⁴.
      Close.check(modes.get(i).key(), blend(modes.get(i), b, s), wanted[i], 8 * 0x1p-24);
    }
    assertThat(blend(Blend.NORMAL, b, s)).isEqualTo(s);
  }

  /**
   * W3C Compositing and Blending 1, #blendingnonseparable: opaque values computed from its formulas
   * and with a general 2D graphics library, to six digits.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          0.8 0.4 0.2  | 0.1 0.5 0.9  | 0.255 0.555 0.855 | 0.900667 0.367333 0.100667 | 0.174 0.574 0.974 | 0.726 0.326 0.126
          0.2 0.2 0.2  | 1 0 0        | 0.2 0.2 0.2       | 0.2 0.2 0.2                | 0.666667 0 0      | 0.3 0.3 0.3
          1 1 1        | 0 0 1        | 1 1 1             | 1 1 1                      | 1 1 1             | 0.11 0.11 0.11
          0 0 0        | 0.3 0.9 0.6  | 0 0 0             | 0 0 0                      | 0 0 0             | 0.687 0.687 0.687
          0.9 0.1 0.5  | 0.5 0.5 0.5  | 0.384 0.384 0.384 | 0.384 0.384 0.384          | 0.384 0.384 0.384 | 1 0.224806 0.612403
          0.6 0.3 0.1  | 0.1 0.3 0.6  | 0.195 0.395 0.695 | 0.6 0.3 0.1                | 0.195 0.395 0.695 | 0.505 0.205 0.005
          0.05 0.1 0.3 | 1 0.85 0.6   | 0.16 0.1 0        | 0.0158 0.0958 0.4158       | 0.16 0.1 0        | 0.828368 0.862694 1
          1 0 0        | 0 1 0        | 0 0.508475 0      | 1 0 0                      | 0 0.508475 0      | 1 0.414286 0.414286
          0.5 0.5 0.5  | 0.2 0.7 0.4  | 0.5 0.5 0.5       | 0.5 0.5 0.5                | 0.183 0.683 0.383 | 0.517 0.517 0.517
          """)
  void nonSeparableModesOfTheStandard(
      String below, String frame, String hue, String saturation, String color, String luminosity) {
    float[] b = floats(below);
    float[] s = floats(frame);
    checkColour(Blend.HUE, b, s, hue);
    checkColour(Blend.SATURATION, b, s, saturation);
    checkColour(Blend.COLOR, b, s, color);
    checkColour(Blend.LUMINOSITY, b, s, luminosity);
  }

  /**
   * Half of the sixth digit is 0.5e-6, and 16 roundings of 2⁻²⁴ are 1e-6: here none is clipped far.
   */
  private static void checkColour(Blend mode, float[] b, float[] s, String want) {
    float[] got = colour(mode, b, s);
    float[] wanted = floats(want);
    for (int p = 0; p < 3; p++) {
      Close.check(mode.key() + " " + p, got[p], wanted[p], 2e-6);
    }
  }

  /**
   * The same document, #generalformula: results over a picture below of alpha 0.5 with a frame of
   * alpha 0.6, computed with a general 2D graphics library. No picture below is ever transparent
   * here (a base with alpha is refused, and mixing keeps what lies below whole), so these very rows
   * cannot occur; the blend function is drawn out of them: {@code αo·Co = αs·(1 − αb)·Cs + αs·αb·B
   * + (1 − αs)·αb·Cb} with {@code αo} = 0.8. Rows over an opaque picture stand in {@code
   * CoverageTest}.
   */
  @ParameterizedTest
  @CsvSource({
    "NORMAL, 0.275 0.475 0.725",
    "MULTIPLY, 0.2675 0.3625 0.455",
    "SCREEN, 0.545 0.55 0.7325",
    "OVERLAY, 0.4775 0.4375 0.5225",
    "DARKEN, 0.275 0.4375 0.4625",
    "LIGHTEN, 0.5375 0.475 0.725",
    "COLOR_DODGE, 0.57083333 0.5875 0.7625",
    "COLOR_BURN, 0.2375 0.2875 0.42916667",
    "HARD_LIGHT, 0.2975 0.4375 0.7025",
    "SOFT_LIGHT, 0.4895 0.4375 0.5369",
    "DIFFERENCE, 0.5 0.325 0.65",
    "EXCLUSION, 0.515 0.475 0.665",
    "HUE, 0.333125 0.495625 0.708125",
    "SATURATION, 0.57525 0.42525 0.42525",
    "COLOR, 0.30275 0.50275 0.75275",
    "LUMINOSITY, 0.50975 0.40975 0.43475"
  })
  void theFunctionInTheGeneralFormula(Blend mode, String result) {
    float[] below = {0.8f, 0.4f, 0.2f};
    float[] frame = {0.1f, 0.5f, 0.9f};
    float[] got = colour(mode, below, frame);
    float[] composite = floats(result);
    for (int p = 0; p < 3; p++) {
      double function = (0.8 * composite[p] - 0.3 * frame[p] - 0.2 * below[p]) / 0.3;
      // The composite, read as float, is off by 2⁻²⁵ and half of its eighth digit, 8/3 of which
      // count; the inputs by 2⁻²⁵ each, the colour modes by 16 roundings: below 24·2⁻²⁴.
      Close.check(mode.key() + " " + p, got[p], function, 24 * 0x1p-24);
    }
  }

  /** Light above white, which the standard does not know: the project's own extension. */
  @ParameterizedTest
  @CsvSource({
    "2, 0.5, 2, 2, 3, 2, 2, 2, 1.5",
    "0.5, 2, 2, 3, 2, 1, 0.5, 0.70710678, 1.5",
    "2, 2, 2, 3, 3, 2, 2, 2, 0",
    "3, 1, 3, 3, 5, 3, 3, 3, 2",
    "1.5, 0.25, 1.5, 0.75, 2, 1.5, 1.5, 1.5, 1.25",
    "1, 1.5, 1.5, 2, 1.5, 1, 1, 1, 0.5",
    "0.25, 1.2, 1.2, 1.4, 0.6, 1, 0.25, 0.5, 0.95",
    // Below black counts as black.
    "-0.5, 0.25, 0.25, 0, 0, 0, 0, 0, 0.25",
    "0.25, -0.5, 0.25, 0, 0, 0.25, 0, 0.0625, 0.25",
    "-1, -2, 0, 0, 0, 0, 0, 0, 0",
    "-1, 3, 3, 5, 0, 0, 0, 0, 3"
  })
  void aboveWhiteAndBelowBlack(
      float b,
      float s,
      double screen,
      double hardLight,
      double overlay,
      double colorDodge,
      double colorBurn,
      double softLight,
      double exclusion) {
    // Both inputs and at most three operations rounded: 4·2⁻²⁴, and half of an eighth digit.
    double tolerance = 4.1 * 0x1p-24;
    Close.check("screen", blend(Blend.SCREEN, b, s), screen, tolerance);
    Close.check("hard-light", blend(Blend.HARD_LIGHT, b, s), hardLight, tolerance);
    Close.check("overlay", blend(Blend.OVERLAY, b, s), overlay, tolerance);
    Close.check("color-dodge", blend(Blend.COLOR_DODGE, b, s), colorDodge, tolerance);
    Close.check("color-burn", blend(Blend.COLOR_BURN, b, s), colorBurn, tolerance);
    Close.check("soft-light", blend(Blend.SOFT_LIGHT, b, s), softLight, tolerance);
    Close.check("exclusion", blend(Blend.EXCLUSION, b, s), exclusion, tolerance);
  }

  /** Modes that take what is below black as it is. */
  @ParameterizedTest
  @CsvSource({"-0.5, 0.25", "0.25, -0.5", "-1, -2", "-1, 3"})
  void lightBelowBlackStaysWhereItCan(float b, float s) {
    assertThat(blend(Blend.NORMAL, b, s)).isEqualTo(s);
    assertThat(blend(Blend.MULTIPLY, b, s)).isEqualTo(b * s);
    assertThat(blend(Blend.DARKEN, b, s)).isEqualTo(Math.min(b, s));
    assertThat(blend(Blend.LIGHTEN, b, s)).isEqualTo(Math.max(b, s));
    assertThat(blend(Blend.DIFFERENCE, b, s)).isEqualTo(Math.abs(b - s));
    assertThat(blend(Blend.PLUS_LIGHTER, b, s)).isEqualTo(b + s);
  }

  /** Non-separable modes far above white, where nothing is clipped at the top. */
  @ParameterizedTest
  @CsvSource({
    "HUE, 0.57428571 1.43142857 2.07428571",
    "SATURATION, 1.59733333 1.13066667 0.89733333",
    "COLOR, 0.932 1.332 1.632",
    "LUMINOSITY, 1.03288591 0.3442953 0"
  })
  void coloursAboveWhite(Blend mode, String want) {
    checkColour(mode, new float[] {2f, 1f, 0.5f}, new float[] {0.2f, 0.6f, 0.9f}, want);
  }

  /** From the clip at white to none there is no jump. */
  @Test
  void theClipAtWhiteGoesWithoutAJump() {
    float[] frame = {0f, 1f, 0f};
    float last = 1f; // W3C: luminosity of (1, 0, 0) and (0, 1, 0) is (1, 0.414286, 0.414286)
    for (int i = 0; i <= 1000; i++) {
      float red = 1f + i / 1000f;
      float got = colour(Blend.LUMINOSITY, new float[] {red, 0f, 0f}, frame)[0];
      // White rises four times as fast as the red.
      assertThat(got - last).isBetween(-1e-6f, 0.0041f);
      last = got;
    }
    // In the end only the least, 0.59 − 0.6, is held to 0, which draws the red towards 0.59.
    Close.check("red", last, 0.59 + (1.99 - 0.59) * 0.59 / 0.6, 1e-6);
  }

  @Test
  void neutralFramesChangeNoBit() {
    float[] below = noise(1);
    for (Blend mode : List.of(Blend.MULTIPLY, Blend.DARKEN)) {
      assertThat(blend(mode, below, all(1f))).as(mode.key()).isEqualTo(below);
    }
    for (Blend mode :
        List.of(
            Blend.SCREEN,
            Blend.LIGHTEN,
            Blend.PLUS_LIGHTER,
            Blend.DIFFERENCE,
            Blend.EXCLUSION,
            Blend.COLOR_DODGE)) {
      assertThat(blend(mode, below, all(0f))).as(mode.key()).isEqualTo(below);
    }
    for (Blend mode : List.of(Blend.HARD_LIGHT, Blend.SOFT_LIGHT)) {
      assertThat(blend(mode, below, all(0.5f))).as(mode.key()).isEqualTo(below);
    }
    assertThat(blend(Blend.SCREEN, below, all(1f))).isEqualTo(all(1f));
    // 1 − (1 − b) is rounded at 1.
    Close.check(
        "color-burn with white", blend(Blend.COLOR_BURN, below, all(1f)), doubles(below), 0x1p-24);
  }

  @Test
  void someFramesSayAllThereIs() {
    float[] below = noise(1);
    float[] inverse = new float[below.length];
    for (int i = 0; i < below.length; i++) {
      inverse[i] = 1f - below[i];
    }
    assertThat(blend(Blend.DIFFERENCE, below, all(1f))).isEqualTo(inverse);
    assertThat(blend(Blend.EXCLUSION, below, all(1f))).isEqualTo(inverse);
    double[] half = doubles(all(0.5f));
    Close.check("exclusion with ½", blend(Blend.EXCLUSION, below, all(0.5f)), half, 4 * 0x1p-24);
  }

  @Test
  void darkerModesDarkenAndBrighterModesBrighten() {
    float[] below = noise(2);
    float[] frame = noise(3);
    for (int i = 0; i < below.length; i++) {
      float b = below[i];
      float s = frame[i];
      assertThat(blend(Blend.MULTIPLY, b, s)).isLessThanOrEqualTo(Math.min(b, s));
      assertThat(blend(Blend.COLOR_BURN, b, s)).isLessThanOrEqualTo(b + 0x1p-23f);
      assertThat(blend(Blend.SCREEN, b, s)).isGreaterThanOrEqualTo(Math.max(b, s));
      assertThat(blend(Blend.COLOR_DODGE, b, s)).isGreaterThanOrEqualTo(b);
      assertThat(blend(Blend.SCREEN, b, s)).isLessThanOrEqualTo(1f);
    }
  }

  @Test
  void modesComeInPairs() {
    float[] below = noise(2);
    float[] frame = noise(3);
    assertThat(blend(Blend.OVERLAY, below, frame)).isEqualTo(blend(Blend.HARD_LIGHT, frame, below));
    for (int i = 0; i < below.length; i++) {
      float b = below[i];
      float s = frame[i];
      double screen = 1 - BlendFormulas.of(Blend.MULTIPLY, 1.0 - b, 1.0 - s);
      Close.check("screen by multiply", blend(Blend.SCREEN, b, s), screen, 3 * 0x1p-24);
      double burn = 1 - BlendFormulas.of(Blend.COLOR_DODGE, 1.0 - b, 1.0 - s);
      Close.check("burn by dodge", blend(Blend.COLOR_BURN, b, s), burn, 4 * 0x1p-24);
    }
    float[][] b = {noise(4), noise(5), noise(6)};
    float[][] s = {noise(7), noise(8), noise(9)};
    float[][] luminosity = new float[3][4099];
    float[][] color = new float[3][4099];
    Blends.of(Blend.LUMINOSITY).run(b, s, luminosity, 0, 4099);
    Blends.of(Blend.COLOR).run(s, b, color, 0, 4099);
    assertThat(Bits.sha256(luminosity)).isEqualTo(Bits.sha256(color));
  }

  @ParameterizedTest
  @EnumSource(names = {"HUE", "SATURATION", "COLOR", "LUMINOSITY"})
  void luminosityIsKeptOrTaken(Blend mode) {
    Lcg noise = new Lcg(12);
    for (int i = 0; i < 2000; i++) {
      float[] b = noise.samples(3, 0, 1);
      float[] s = noise.samples(3, 0, 1);
      double want = BlendFormulas.lum(doubles(mode == Blend.LUMINOSITY ? s : b));
      // Each channel is within the contract's bound of the formula, and the weights sum to 1.
      double got = BlendFormulas.lum(doubles(colour(mode, b, s)));
      Close.check(mode.key(), got, want, 160 * 0x1p-24);
      Close.check(mode.key() + " of itself", colour(mode, b, b), doubles(b), 16 * 0x1p-24);
    }
  }

  @Test
  void greyHasNeitherHueNorSaturation() {
    Lcg noise = new Lcg(13);
    for (int i = 0; i < 500; i++) {
      float g = (float) noise.next();
      float[] grey = {g, g, g};
      float[] s = noise.samples(3, 0, 1);
      Close.check("hue", colour(Blend.HUE, grey, s), doubles(grey), 16 * 0x1p-24);
      Close.check("saturation", colour(Blend.SATURATION, grey, s), doubles(grey), 16 * 0x1p-24);
    }
  }

  /**
   * Lighten and darken commute with every rising curve, so a pop at full strength is the same in
   * linear light and in encoded values.
   */
  @Test
  void whatOnlyChoosesIsTheSameBeforeAndAfterACurve() {
    for (Blend mode : Blend.values()) {
      if (!mode.choosesOnly()) {
        continue;
      }
      float[] below = noise(4);
      float[] frame = noise(5);
      float[] after = blend(mode, below, frame);
      Encoded.encode(after, 0, after.length);
      Encoded.encode(below, 0, below.length);
      Encoded.encode(frame, 0, frame.length);
      assertThat(blend(mode, below, frame)).as(mode.key()).isEqualTo(after);
    }
  }

  /** Bits on noise from below black to above white. */
  @ParameterizedTest
  @CsvSource({
    "NORMAL, aa6d8636dfae85c0",
    "MULTIPLY, fd0d7423443ebc7c",
    "SCREEN, 064d26065443d3a4",
    "DARKEN, 61d150aeab845878",
    "LIGHTEN, c9abc9401d22fbab",
    "PLUS_LIGHTER, 39772eb68beb0ff7",
    "OVERLAY, 50a3258538943bf6",
    "COLOR_DODGE, d00045140e49a598",
    "COLOR_BURN, 1f5301f02afba95a",
    "HARD_LIGHT, f40a89950fcc3b3f",
    "SOFT_LIGHT, cdcd9dbb7f89bf95",
    "DIFFERENCE, 8827fd48992d51dd",
    "EXCLUSION, 291e1736d4431529"
  })
  @Tag("bits")
  void bitsArePinned(Blend mode, String hash) {
    float[] below = new Lcg(8).samples(4099, -0.2, 1.8);
    float[] frame = new Lcg(9).samples(4099, -0.2, 1.8);
    assertThat(Bits.sha256(blend(mode, below, frame))).startsWith(hash);
  }

  /** The same of the modes that look at all three channels. */
  @ParameterizedTest
  @CsvSource({
    "HUE, 42e5b8e4a17cc2af",
    "SATURATION, ab1c7fa0114364fb",
    "COLOR, 74efccc66c913de5",
    "LUMINOSITY, ccd123d2fbafa77c"
  })
  @Tag("bits")
  void bitsOfColoursArePinned(Blend mode, String hash) {
    assertThat(Bits.sha256(blended(Blends.of(mode)))).startsWith(hash);
  }

  @Test
  @Tag("bits")
  void bitsOfTheBrighterArePinned() {
    double[] weights = {0.2126, 0.7152, 0.0722};
    assertThat(Bits.sha256(blended(Blends.brighter(weights)))).startsWith("3f25c308efb06f34");
  }

  private static float[][] blended(BlendKernel kernel) {
    float[][] below = new float[3][];
    float[][] frame = new float[3][];
    for (int p = 0; p < 3; p++) {
      below[p] = new Lcg(20 + p).samples(4099, -0.2, 1.8);
      frame[p] = new Lcg(30 + p).samples(4099, -0.2, 1.8);
    }
    float[][] out = new float[3][4099];
    kernel.run(below, frame, out, 0, 4099);
    return out;
  }
}
