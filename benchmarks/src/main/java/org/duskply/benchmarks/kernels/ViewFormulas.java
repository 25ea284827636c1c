package org.duskply.benchmarks.kernels;

import java.util.Arrays;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.testing.reference.AdjustFormulas;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.engine.testing.reference.PopFormulas;
import org.duskply.engine.testing.reference.Smooth;
import org.duskply.recipe.NamedSpace;

/** Masks that are read off {@link Views}, in double. */
final class ViewFormulas {
  private static final ColourSpace SPACE = ColourSpace.of(NamedSpace.SRGB);
  private static final Oklab OKLAB = Oklab.of(SPACE);
  private static final int SIDE = 5;

  private ViewFormulas() {}

  /** Where a pixel is of some luminance; bounds lie a sixteenth of a 16-bit code further out. */
  static double luminance(double from, double to, double soft, double[] c) {
    double slack = 0x1p-20;
    double v = EncodedAxis.encode(AdjustFormulas.luminance(SPACE.luminance(), c[0], c[1], c[2]));
    return Smooth.of(from - slack - soft, from - slack, v)
        * Smooth.of(-to - slack - soft, -to - slack, -v);
  }

  /** Where a pixel is of some hue. */
  static double hue(double centre, double width, double soft, double[] c) {
    double[] lab = OKLAB.lab(c[0], c[1], c[2]);
    return HueWeight.of(centre, width, soft, lab[1], lab[2]);
  }

  /** Where a flash reached: the median of the stops that it added, over 5 × 5 pixels. */
  static double flash(Views views, int flash, int ambient, double over, int x, int y) {
    double[] window = new double[SIDE * SIDE];
    for (int i = 0; i < window.length; i++) {
      int column = x + i % SIDE - SIDE / 2;
      int row = y + i / SIDE - SIDE / 2;
      double lit = PopFormulas.compared(SPACE.luminance(), views.linear(flash, column, row));
      double unlit = PopFormulas.compared(SPACE.luminance(), views.linear(ambient, column, row));
      window[i] = StrictMath.log(lit / unlit) / StrictMath.log(2);
    }
    Arrays.sort(window);
    return Smooth.of(over / 2, over, window[window.length / 2]);
  }
}
