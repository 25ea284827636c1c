package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.LightTable;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Frames that are transparent in places over an opaque picture: W3C Compositing and Blending 1,
 * #generalformula with {@code αb} = 1, through the engine's own mix. A picture below that is itself
 * transparent cannot occur (a base with alpha is refused, and mixing keeps the picture whole), so
 * the document's formula is {@code αs·B(Cb, Cs) + (1 − αs)·Cb} with {@code αo} = 1.
 */
class CoverageTest {
  private static final double[] BELOW = {0.8, 0.4, 0.2};
  private static final double[] FRAME = {0.1, 0.5, 0.9};

  private static float[] laid(double[] below, double[] frame, double alpha, String keys) {
    LightTable table =
        new LightTable(1, 1)
            .frame("dusk", (x, y, c) -> below[c])
            .covered("cut", (x, y, c) -> c == 3 ? alpha : frame[c]);
    return LightTable.pixel(table.picture("  - { lay: cut" + keys + " }"), 0, 0);
  }

  /** Source-over, computed from the document's formula. */
  @ParameterizedTest
  @CsvSource({"1, 1, 0.5, 0", "0, 0.2, 0.4, 0.6", "0.25, 0.4, 0.425, 0.45"})
  void sourceOverAnOpaquePicture(double alpha, double r, double g, double b) {
    float[] got = laid(new double[] {0.2, 0.4, 0.6}, new double[] {1, 0.5, 0}, alpha, "");
    // Inputs rounded by 2⁻²⁵, three operations of 2⁻²⁴.
    Close.check("source-over", got, new double[] {r, g, b}, 4 * 0x1p-24);
  }

  @ParameterizedTest
  @EnumSource
  void everyModeIsMixedByItsCoverage(Blend mode) {
    double[] function = BlendFormulas.of(mode, BELOW, FRAME);
    float[] got = laid(BELOW, FRAME, 0.6, ", blend: " + mode.key());
    for (int c = 0; c < 3; c++) {
      double want = 0.6 * function[c] + 0.4 * BELOW[c];
      // The function within 24·2⁻²⁴ (BlendsTest), 0.6 of it counting; mix and inputs 4·2⁻²⁴.
      Close.check(mode.key() + " " + c, got[c], want, 19 * 0x1p-24);
    }
  }

  /** ISO 32000-1 §11.3.7 (from memory): mask, opacity and alpha multiply together. */
  @Test
  void opacityMultipliesCoverage() {
    float[] half = laid(BELOW, FRAME, 0.5, ", opacity: 0.5, blend: screen");
    float[] quarter = laid(BELOW, FRAME, 0.25, ", blend: screen");
    assertThat(half).isEqualTo(quarter);
  }

  @Test
  void whatIsNotCoveredKeepsItsBits() {
    float[] kept = {0.8f, 0.4f, 0.2f};
    for (Blend mode : Blend.values()) {
      assertThat(laid(BELOW, FRAME, 0, ", blend-in: encoded, blend: " + mode.key()))
          .isEqualTo(kept);
    }
  }
}
