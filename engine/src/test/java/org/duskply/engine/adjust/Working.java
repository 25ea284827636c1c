package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;

/** The working space of these tests and kernels prepared for it. */
final class Working {
  static final ColourSpace SPACE = ColourSpace.of(NamedSpace.REC2020);

  /** Luminance of linear BT.2020: the middle row of its matrix, from its primaries and D65. */
  static final double[] WEIGHTS = {0.262700212, 0.6779980715, 0.0593017165};

  private Working() {}

  static AdjustKernel kernel(Adjustment... adjustments) {
    return Adjustments.prepare(List.of(adjustments), SPACE);
  }
}
