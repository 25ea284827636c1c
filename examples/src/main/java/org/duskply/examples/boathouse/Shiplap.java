package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Texture;
import org.duskply.examples.trace.Vec;

/**
 * The boathouse's cladding: horizontal boards that lap over one another, each a little shaded by
 * the one above; on the inner side of the walls the plaster of the lit room.
 */
final class Shiplap implements Texture {
  private static final double BOARD = 0.165;
  private final Axes house;

  Shiplap(Axes house) {
    this.house = house;
  }

  @Override
  public void paint(Surface s) {
    Vec p = new Vec(s.x, s.y, s.z);
    double x = house.x(p);
    double y = house.y(p);
    double z = house.z(p);
    if (House.indoors(x, y, z)) {
      inside(s, x, y, z);
      return;
    }
    double along = x + z;
    double rows = y / BOARD;
    int row = (int) Math.floor(rows);
    double up = rows - row;
    double lengths = along / 3.3 + Noise.unit(row, 5, 901);
    int board = (int) Math.floor(lengths);
    double joint = Math.abs(lengths - Math.floor(lengths + 0.5)) * 3.3;
    double tone = Noise.unit(row, board, 902);
    double grain = Noise.at(along * 1.1 + 17 * tone, rows * 9, 903 + row);
    double fine = Noise.at(along * 6, rows * 34, 904);
    double streak = Noise.fractal(along * 2.6, y * 0.35, 3, 905);
    double value =
        0.80
            + 0.42 * (tone - 0.5)
            + 0.6 * (grain - 0.5)
            + 0.35 * (fine - 0.5)
            + 0.45 * (streak - 0.5);
    double lap = Maths.smooth(0, 0.10, up) * (1 - 0.45 * Maths.smooth(0.86, 1, up));
    value *= Maths.mix(0.30, 1, lap) * (joint < 0.004 ? 0.4 : 1);
    double grey = 0.5 * Noise.unit(row, board, 906) + 0.4 * streak;
    s.colour(
        Maths.mix(0.250, 0.185, grey) * value,
        Maths.mix(0.140, 0.148, grey) * value,
        Maths.mix(0.075, 0.115, grey) * value);
    s.gloss = 0.05;
    s.shine = 16;
    s.lean(
        0.10 * (grain - 0.5), up < 0.10 ? -0.9 : 0.10 + 0.08 * (fine - 0.5), 0.10 * (fine - 0.5));
  }

  private static void inside(Surface s, double x, double y, double z) {
    Textures.plaster(s);
    if (y < 0.95) {
      double gap = Maths.fraction((x + z) / 0.14) < 0.06 ? 0.5 : 1;
      s.tone(0.55 * gap);
      s.green *= 0.8;
      s.blue *= 0.6;
    }
  }
}
