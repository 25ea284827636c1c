package org.duskply.engine.adjust;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.recipe.adjust.Gel;

/** The light through a gel: one {@link MatrixKernel} with the numbers of {@link GelMatrix}. */
final class GelKernel implements AdjustKernel {
  private final float[] matrix;

  private GelKernel(float[] matrix) {
    this.matrix = matrix;
  }

  static GelKernel prepare(Gel gel, ColourSpace working) {
    return new GelKernel(MatrixKernel.prepare(GelMatrix.of(gel, working)));
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    MatrixKernel.run(red, green, blue, from, to, matrix);
  }
}
