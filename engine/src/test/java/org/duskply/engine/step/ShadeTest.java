package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.LightTable;
import org.duskply.recipe.adjust.Gel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dodge and burn: {@code W·b·2^(±stops)}. */
class ShadeTest {
  private static final double[] LIGHT = {0.18, 0.21, 0.4};

  private static float[] shaded(String step) {
    LightTable table = new LightTable(1, 1).frame("dusk", (x, y, c) -> LIGHT[c]);
    return LightTable.pixel(table.picture("  - { " + step + " }"), 0, 0);
  }

  @ParameterizedTest
  @CsvSource({
    "dodge: 0.4, 0.4",
    "burn: 0.4, -0.4",
    "dodge: { stops: 2 }, 2",
    "burn: { stops: 3.5 }, -3.5"
  })
  void stopsAreDoublings(String step, double stops) {
    for (int c = 0; c < 3; c++) {
      double want = LIGHT[c] * StrictMath.pow(2, stops);
      // The light, the factor and the product are rounded once each.
      Close.within(step, shaded(step)[c], want, 3 * 0x1p-24 * want);
    }
  }

  @ParameterizedTest
  @CsvSource({"dodge, 0.4", "burn, -0.4"})
  void aGelColoursIt(String verb, double stops) {
    float[] got = shaded(verb + ": { stops: 0.4, gel: 120 }");
    double[] matrix = GelMatrix.of(new Gel(120.0, null, null, 0), LightTable.WORKING);
    double f = StrictMath.pow(2, stops);
    double[] want = Matrix3.apply(matrix, LIGHT[0] * f, LIGHT[1] * f, LIGHT[2] * f);
    for (int c = 0; c < 3; c++) {
      // As above, and the coefficients, products and sums of the matrix, whose parts are below 1.5.
      Close.within(verb, got[c], want[c], 1.5 * 8 * 0x1p-24);
    }
    // Plus warms: red over blue rises.
    assertThat(got[0] / got[2]).isGreaterThan((float) (LIGHT[0] / LIGHT[2]));
  }

  @Test
  void aBurnUndoesADodge() {
    LightTable table = new LightTable(1, 1).frame("dusk", (x, y, c) -> LIGHT[c]);
    float[] got = LightTable.pixel(table.picture("  - { dodge: 3 }\n  - { burn: 3 }"), 0, 0);
    assertThat(got).isEqualTo(new float[] {0.18f, 0.21f, 0.4f});
  }

  @Test
  void noStopsAndNoGelChangeNoBit() {
    assertThat(shaded("dodge: 0")).isEqualTo(new float[] {0.18f, 0.21f, 0.4f});
    assertThat(shaded("burn: { stops: 0, gel: 0 }")).isEqualTo(new float[] {0.18f, 0.21f, 0.4f});
  }
}
