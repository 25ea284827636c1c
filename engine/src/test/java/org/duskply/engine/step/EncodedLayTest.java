package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Lcg;
import org.duskply.engine.testing.LightTable;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Modes on the encoded axis: {@code L(B(E(b), E(f)))}. */
class EncodedLayTest {
  private static final int SIDE = 40;
  private static final float[] BELOW = new Lcg(41).samples(3 * SIDE * SIDE, -0.1, 2.5);
  private static final float[] FRAME = new Lcg(42).samples(3 * SIDE * SIDE, -0.1, 2.5);

  private static int at(int x, int y, int c) {
    return 3 * (y * SIDE + x) + c;
  }

  private static LightTable table() {
    return new LightTable(SIDE, SIDE)
        .frame("dusk", (x, y, c) -> BELOW[at(x, y, c)])
        .frame("late", (x, y, c) -> FRAME[at(x, y, c)]);
  }

  /**
   * The way to the axis has its own test and error; from its floats on, the mode is within the
   * bound of its contract, which the way back, at most 2.6 times as steep at encoded 1.5, carries
   * over, and adds its own relative 2⁻²⁰.
   */
  @ParameterizedTest
  @EnumSource
  void agreesWithTheFormula(Blend mode) {
    var picture =
        table().picture("  - { lay: late, blend-in: encoded, blend: " + mode.key() + " }");
    for (int y = 0; y < SIDE; y++) {
      for (int x = 0; x < SIDE; x++) {
        double[] b = encoded(BELOW, x, y);
        double[] f = encoded(FRAME, x, y);
        double[] want = BlendFormulas.of(mode, b, f);
        float[] got = LightTable.pixel(picture, x, y);
        for (int c = 0; c < 3; c++) {
          double light = EncodedAxis.decode(want[c]);
          double own = BlendFormulas.ofColours(mode) ? 160 * 0x1p-24 * 1.6 : 12 * 0x1p-24;
          double off = own * slope(want[c]) + 0x1p-20 * Math.abs(light) + 1e-7;
          Close.within(mode.key() + " at " + x + ", " + y, got[c], light, off);
        }
      }
    }
  }

  /** How steep the way back is near a value, the sum of two encoded values at most. */
  private static double slope(double v) {
    double size = Math.max(Math.abs(v), 0.1);
    return (EncodedAxis.decode(size + 1e-4) - EncodedAxis.decode(size - 1e-4)) / 2e-4;
  }

  private static double[] encoded(float[] linear, int x, int y) {
    double[] encoded = new double[3];
    for (int c = 0; c < 3; c++) {
      encoded[c] = Encoded.encode(linear[at(x, y, c)]);
    }
    return encoded;
  }

  @Test
  void whatOnlyChoosesKeepsTheBitsOfEither() {
    for (Blend mode : Blend.values()) {
      if (mode.choosesOnly()) {
        String lay = "  - { lay: late, blend: " + mode.key();
        var linear = table().picture(lay + " }");
        var encoded = table().picture(lay + ", blend-in: encoded }");
        for (int p = 0; p < 3; p++) {
          assertThat(encoded.plane(p)).as(mode.key()).isEqualTo(linear.plane(p));
        }
      }
    }
  }

  /** Half of code 255 is code 127.5: as photographers know "multiply" from encoded pictures. */
  @Test
  void middleGreyHalvesCodesAndNotLight() {
    double grey = EncodedAxis.decode(0.5);
    LightTable table =
        new LightTable(1, 1).frame("dusk", (x, y, c) -> 1).frame("late", (x, y, c) -> grey);
    float[] got =
        LightTable.pixel(
            table.picture(
                "  - { lay: late, blend: multiply }\n  - { lay: late, blend: multiply, blend-in: encoded }"),
            0,
            0);
    // 0.5 × 0.5 of the screen's axis; its light by IEC 61966-2-1.
    Close.check("quarter", got[0], 0.0508760815, 1e-7);
  }
}
