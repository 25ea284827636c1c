package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Texture;

/**
 * Roof slates in staggered rows, for a slab whose own axes run along the ridge and down the slope.
 */
final class Slates implements Texture {
  private static final double ROW = 0.21;
  private static final double WIDTH = 0.30;

  @Override
  public void paint(Surface s) {
    if (s.side != 1 || s.v < 0) {
      soffit(s);
      return;
    }
    double rows = s.w / ROW;
    int row = (int) Math.floor(rows);
    double down = rows - row;
    double columns = s.u / WIDTH + 0.5 * (row & 1) + 0.12 * Noise.unit(row, 1, 950);
    int column = (int) Math.floor(columns);
    double across = columns - column;
    double tone = Noise.unit(row, column, 951);
    double rough = Noise.fractal(s.u * 16, s.w * 22, 2, 952 + column);
    double value = 0.75 + 0.6 * (tone - 0.5) + 0.45 * (rough - 0.5);
    double moss = Maths.smooth(0.56, 0.75, Noise.fractal(s.u * 0.9, s.w * 1.2, 4, 953)) * 0.6;
    double gap = Math.min(across, 1 - across) * WIDTH;
    double edge = Maths.smooth(0, 0.10, down);
    value *= Maths.mix(0.25, 1, edge) * Maths.mix(0.4, 1, Maths.smooth(0.002, 0.007, gap));
    double warm = Noise.unit(row, column, 954);
    s.colour(
        Maths.mix(0.118 + 0.03 * warm, 0.10, moss) * value,
        Maths.mix(0.122, 0.115, moss) * value,
        Maths.mix(0.140 - 0.02 * warm, 0.045, moss) * value);
    s.gloss = 0.30 * (1 - moss) * edge;
    s.shine = 22 + 30 * tone;
    s.lean(
        0.10 * (tone - 0.5) + 0.12 * (rough - 0.5),
        0,
        0.10 * (Noise.unit(row, column, 955) - 0.5) + 0.12 * (rough - 0.5));
  }

  /** The boards under the slates, seen at the eaves. */
  private static void soffit(Surface s) {
    double boards = s.u / 0.14;
    double gap = Math.abs(Maths.fraction(boards) - 0.5);
    double tone = 0.8 + 0.4 * Noise.unit((int) Math.floor(boards), 2, 957);
    double value = tone * (gap > 0.46 ? 0.35 : 1);
    s.colour(0.30 * value, 0.21 * value, 0.125 * value);
  }
}
