package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Digests;
import org.duskply.engine.testing.Sequence;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Numbers of the modes, and that each mode is held to its contract. */
class BlendVectorsTest {
  private static float blend(Blend mode, float below, float frame) {
    float[] out = new float[1];
    Blends.of(mode).run(new float[] {below}, new float[] {frame}, out, 0, 1);
    return out[0];
  }

  /**
   * W3C Compositing and Blending 1, #blendingseparable: the formulas worked in Python, agreeing
   * with a 2D graphics library to 1.5e-7. Bound: inputs and answer are each rounded to float.
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
  void standardVectors(
      float b, float f, double multiply, double screen, double darken, double lighten) {
    double bound = 3 * 0x1p-24;
    Close.check("multiply", blend(Blend.MULTIPLY, b, f), multiply, bound);
    Close.check("screen", blend(Blend.SCREEN, b, f), screen, bound);
    Close.check("darken", blend(Blend.DARKEN, b, f), darken, bound);
    Close.check("lighten", blend(Blend.LIGHTEN, b, f), lighten, bound);
    Close.check("normal", blend(Blend.NORMAL, b, f), f, 0);
    Close.check("plus-lighter", blend(Blend.PLUS_LIGHTER, b, f), b + (double) f, bound);
  }

  /** Our own extension above white: no standard defines screen there. */
  @ParameterizedTest
  @CsvSource({
    "2, 0.5, 2",
    "0.5, 2, 2",
    "2, 2, 2",
    "3, 1, 3",
    "1.5, 0.25, 1.5",
    "1, 1.5, 1.5",
    "0.25, 1.2, 1.2"
  })
  void screenAboveWhite(float b, float f, float screen) {
    assertThat(blend(Blend.SCREEN, b, f)).isEqualTo(screen);
  }

  /** A mode without its own test class would be a mode nobody holds to anything. */
  @ParameterizedTest
  @EnumSource(Blend.class)
  void everyModeIsHeldToTheContract(Blend mode) throws ReflectiveOperationException {
    StringBuilder name = new StringBuilder();
    for (String word : mode.key().split("-", -1)) {
      name.append(Character.toUpperCase(word.charAt(0))).append(word.substring(1));
    }
    Class<?> test = Class.forName(getClass().getPackageName() + "." + name + "Test");
    assertThat(BlendKernelContract.class).isAssignableFrom(test);
    var constructor = test.getDeclaredConstructor();
    constructor.setAccessible(true);
    assertThat(((BlendKernelContract) constructor.newInstance()).mode).isEqualTo(mode);
  }

  @Test
  @Tag("bits")
  void sameBitsEverywhere() {
    float[] below = new Sequence(1).next(65536, -0.5, 3);
    float[] frame = new Sequence(2).next(65536, -0.5, 3);
    float[][] made = new float[Blend.values().length][65536];
    for (Blend mode : Blend.values()) {
      Blends.of(mode).run(below, frame, made[mode.ordinal()], 0, 65536);
    }
    // In the order of the modes.
    assertThat(Arrays.stream(made).map(Digests::of).toList())
        .containsExactly(
            "ab7f0a7c2bb134220400126cd1f9c83776cb08d966624e42d9b2547daf358bd3",
            "4e6a7dc96f8705befe7d660a873f5e9e9ec96206e80efecbd9ba86c9717f20ff",
            "eea07726c9912362433863de0b484b1eeb6bfa06bbeb172ee6143a9d038726c9",
            "03e40ee0c8aa2c1c346343edc263eb2aa3e2b08b61cc43fbec8c18cd89bb38de",
            "9a1b0144521852908effaadb2fe397b60217f239075032886beff5bc835d6444",
            "64228bcdbde8767e81fb016dc95116e42a32847abf073297a8dda5f28cd6a1fd");
  }
}
