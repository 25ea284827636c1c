package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.testing.Bits;
import org.duskply.engine.testing.BlendKernelContract;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Lcg;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The table of blend modes, and what binds modes together. */
class BlendsTest {
  private static float blend(Blend mode, float below, float frame) {
    float[] out = new float[1];
    Blends.of(mode).run(new float[] {below}, new float[] {frame}, out, 0, 1);
    return out[0];
  }

  private static float[] noise(long seed) {
    return new Lcg(seed).samples(4099, 0, 1);
  }

  private static float[] blend(Blend mode, float[] below, float[] frame) {
    float[] out = new float[below.length];
    Blends.of(mode).run(below, frame, out, 0, out.length);
    return out;
  }

  @ParameterizedTest
  @EnumSource
  void everyModeHasAContract(Blend mode) throws ClassNotFoundException {
    String kernel = Blends.of(mode).getClass().getSimpleName();
    String test = kernel.replace("Kernel", "Test");
    Class<?> contract = Class.forName(getClass().getPackageName() + "." + test);
    assertThat(contract).isAssignableTo(BlendKernelContract.class);
  }

  /**
   * W3C Compositing and Blending 1, #blendingseparable: opaque values computed from its formulas
   * and with a general 2D graphics library.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 0, 0, 0, 0",
    "0, 1, 0, 1, 0, 1",
    "1, 0, 0, 1, 0, 1",
    "1, 1, 1, 1, 1, 1",
    "0.25, 0.75, 0.1875, 0.8125, 0.25, 0.75",
    "0.75, 0.25, 0.1875, 0.8125, 0.25, 0.75",
    "0.5, 0.5, 0.25, 0.75, 0.5, 0.5",
    "0.2, 0.6, 0.12, 0.68, 0.2, 0.6",
    "0.04, 0.9, 0.036, 0.904, 0.04, 0.9",
    "0.8, 0.9, 0.72, 0.98, 0.8, 0.9",
    "0.18, 0.1, 0.018, 0.262, 0.1, 0.18",
    "0.6, 0.5, 0.3, 0.8, 0.5, 0.6"
  })
  void separableModesOfTheStandard(
      float b, float s, double multiply, double screen, double darken, double lighten) {
    // Both inputs rounded to float once and at most three operations: 4·2⁻²⁴.
    double tolerance = 4 * 0x1p-24;
    Close.check("multiply", blend(Blend.MULTIPLY, b, s), multiply, tolerance);
    Close.check("screen", blend(Blend.SCREEN, b, s), screen, tolerance);
    Close.check("darken", blend(Blend.DARKEN, b, s), darken, tolerance);
    Close.check("lighten", blend(Blend.LIGHTEN, b, s), lighten, tolerance);
    Close.check("normal", blend(Blend.NORMAL, b, s), s, 0);
  }

  /** Light above white, which the standard does not know: the project's own extension. */
  @ParameterizedTest
  @CsvSource({
    "2, 0.5, 2",
    "0.5, 2, 2",
    "2, 2, 2",
    "3, 1, 3",
    "1.5, 0.25, 1.5",
    "1, 1.5, 1.5",
    "0.25, 1.2, 1.2",
    "-0.5, 0.25, 0.25",
    "0.25, -0.5, 0.25",
    "-1, -2, 0",
    "-1, 3, 3"
  })
  void screenAboveWhiteAndBelowBlack(float b, float s, float want) {
    assertThat(blend(Blend.SCREEN, b, s)).isEqualTo(want);
  }

  @Test
  void neutralFramesChangeNoBit() {
    float[] below = noise(1);
    float[] black = new float[below.length];
    float[] white = new float[below.length];
    java.util.Arrays.fill(white, 1f);
    assertThat(blend(Blend.MULTIPLY, below, white)).isEqualTo(below);
    assertThat(blend(Blend.SCREEN, below, black)).isEqualTo(below);
    assertThat(blend(Blend.SCREEN, below, white)).isEqualTo(white);
    assertThat(blend(Blend.DARKEN, below, white)).isEqualTo(below);
    assertThat(blend(Blend.LIGHTEN, below, black)).isEqualTo(below);
    assertThat(blend(Blend.PLUS_LIGHTER, below, black)).isEqualTo(below);
  }

  @Test
  void darkerModesDarkenAndBrighterModesBrighten() {
    float[] below = noise(2);
    float[] frame = noise(3);
    for (int i = 0; i < below.length; i++) {
      float b = below[i];
      float s = frame[i];
      assertThat(blend(Blend.MULTIPLY, b, s)).isLessThanOrEqualTo(Math.min(b, s));
      assertThat(blend(Blend.SCREEN, b, s)).isGreaterThanOrEqualTo(Math.max(b, s));
      assertThat(blend(Blend.SCREEN, b, s)).isLessThanOrEqualTo(1f);
      // screen(b, s) = 1 − multiply(1 − b, 1 − s)
      double mirrored = 1 - (1.0 - b) * (1.0 - s);
      Close.check("screen by multiply", blend(Blend.SCREEN, b, s), mirrored, 3 * 0x1p-24);
    }
  }

  /**
   * Lighten and darken commute with every rising curve, so a pop at full strength is the same in
   * linear light and in encoded values.
   */
  @Test
  void lightenIsTheSameBeforeAndAfterACurve() {
    float[] below = noise(4);
    float[] frame = noise(5);
    float[] after = blend(Blend.LIGHTEN, below, frame);
    Encoded.encode(after, 0, after.length);
    Encoded.encode(below, 0, below.length);
    Encoded.encode(frame, 0, frame.length);
    assertThat(blend(Blend.LIGHTEN, below, frame)).isEqualTo(after);
  }

  /** Bits on noise from below black to above white. */
  @Test
  @Tag("bits")
  void bitsArePinned() {
    float[] below = new Lcg(8).samples(4099, -0.2, 1.8);
    float[] frame = new Lcg(9).samples(4099, -0.2, 1.8);
    assertThat(Bits.sha256(blend(Blend.NORMAL, below, frame))).startsWith("aa6d8636dfae85c0");
    assertThat(Bits.sha256(blend(Blend.MULTIPLY, below, frame))).startsWith("fd0d7423443ebc7c");
    assertThat(Bits.sha256(blend(Blend.SCREEN, below, frame))).startsWith("064d26065443d3a4");
    assertThat(Bits.sha256(blend(Blend.DARKEN, below, frame))).startsWith("61d150aeab845878");
    assertThat(Bits.sha256(blend(Blend.LIGHTEN, below, frame))).startsWith("c9abc9401d22fbab");
    assertThat(Bits.sha256(blend(Blend.PLUS_LIGHTER, below, frame))).startsWith("39772eb68beb0ff7");
  }
}
