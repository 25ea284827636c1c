package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Exposure;
import org.junit.jupiter.api.Test;

/** Stops are doublings. */
class ExposureTest extends AdjustKernelContract {
  ExposureTest() {
    super(Exposure.class);
  }

  @Override
  List<Adjustment> cases() {
    return List.of(new Exposure(1), new Exposure(-0.5), new Exposure(0.01), new Exposure(20));
  }

  @Override
  List<Adjustment> identities() {
    return List.of(new Exposure(0), new Exposure(-0.0));
  }

  @Override
  double bound() {
    return 2 * 0x1p-24; // the factor rounded, the product rounded
  }

  @Test
  void wholeStopsAreExact() {
    float[] up = adjusted(List.of(new Exposure(2)), NamedSpace.SRGB, 0.1f, -0.2f, 3);
    assertThat(up).containsExactly(0.4f, -0.8f, 12);
    float[] down = adjusted(List.of(new Exposure(-3)), NamedSpace.SRGB, 0.8f, 0, 1e-20f);
    assertThat(down).containsExactly(0.1f, 0, 1e-20f / 8);
  }

  @Test
  void stopsInARowAddUp() {
    List<Adjustment> row = List.of(new Exposure(0.25), new Exposure(0.5), new Exposure(0.25));
    assertThat(adjusted(row, NamedSpace.SRGB, 0.3f, 0.6f, -1)).containsExactly(0.6f, 1.2f, -2);
  }
}
