package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.duskply.engine.testing.AdjustKernelContract;
import org.duskply.recipe.adjust.Exposure;
import org.junit.jupiter.api.Test;

/** More and less light: stops are doublings. */
class ExposureTest extends AdjustKernelContract {
  @Override
  protected List<Case> cases() {
    return List.of(exposed(1), exposed(-3), exposed(0.35), exposed(12.1), exposed(-20));
  }

  private static Case exposed(double stops) {
    double factor = StrictMath.pow(2, stops);
    // The factor and the product are each rounded once: 2⁻²⁴ of the result, or a
    // unit of the least float where it is denormal.
    return new Case(
        stops + " stops",
        Working.kernel(new Exposure(stops)),
        (r, g, b) -> new double[] {r * factor, g * factor, b * factor},
        (in, want) -> 2 * 0x1p-24 * greatest(want) + Float.MIN_VALUE);
  }

  /** APEX: one stop is a doubling; a stop and its opposite cancel to the bit. */
  @Test
  void wholeStopsAreExact() {
    float[][] p = {{0.05f, 0.1f}, {0.2f, 0.7f}, {0.3f, 65504f}};
    Working.kernel(new Exposure(2)).run(p[0], p[1], p[2], 0, 2);
    assertThat(p[0]).containsExactly(4 * 0.05f, 4 * 0.1f);
    Working.kernel(new Exposure(-2)).run(p[0], p[1], p[2], 0, 2);
    assertThat(p[2]).containsExactly(0.3f, 65504f);
  }
}
