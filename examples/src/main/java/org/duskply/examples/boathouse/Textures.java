package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Surface;

/** The plain stuffs of the scene: sawn and planed timber, stone, steel, cloth, plaster. */
final class Textures {
  private Textures() {}

  /** Weathered decking: grain along the block's longest direction, a tone of its own a plank. */
  static void deck(Surface s) {
    timber(s, 0.235, 0.195, 0.155, 0.5);
    s.gloss = 0.10;
    s.shine = 18;
  }

  /** Dark tarred piles and beams. */
  static void tarred(Surface s) {
    timber(s, 0.075, 0.062, 0.05, 0.4);
    s.gloss = 0.06;
  }

  /** Oiled oak of tables, chairs, thwarts. */
  static void oak(Surface s) {
    timber(s, 0.40, 0.22, 0.095, 0.35);
    s.gloss = 0.12;
    s.shine = 30;
  }

  /** Trim, window frames, bargeboards: a pale painted grey-green. */
  static void trim(Surface s) {
    timber(s, 0.46, 0.47, 0.41, 0.10);
    s.gloss = 0.08;
    s.shine = 24;
  }

  private static void timber(Surface s, double r, double g, double b, double contrast) {
    double along = s.u;
    double across = s.side == 1 ? s.w : s.v;
    double tone = Noise.unit(s.seed, 3, 5);
    double grain = Noise.at(along * 1.3 + 31 * tone, across * 46 + s.v * 11, s.seed);
    double fine = Noise.at(along * 5, across * 190 + s.v * 60, s.seed + 9);
    double value = 1 + contrast * (0.7 * (tone - 0.5) + 0.75 * (grain - 0.5) + 0.5 * (fine - 0.5));
    double silver = 0.12 * contrast * (Noise.unit(s.seed, 4, 6) - 0.5);
    s.colour(r * value * (1 - silver), g * value, b * value * (1 + 2 * silver));
    double bump = 0.12 * contrast;
    s.lean(bump * (grain - 0.5), bump * (fine - 0.5), bump * (grain - fine));
  }

  /** Rough grey stone with lichen; relief from noise in space. */
  static void stone(Surface s) {
    double tone = Noise.unit(s.seed, 11, 2);
    double a = Noise.at(s.x * 7, s.y * 9, s.z * 7, 400);
    double b = Noise.at(s.x * 29, s.y * 33, s.z * 29, 410);
    double c = Noise.at(s.x * 70, s.y * 70, s.z * 70, 420);
    double value = 0.55 + 0.45 * tone + 0.5 * (a - 0.5) + 0.5 * (b - 0.5) + 0.3 * (c - 0.5);
    double damp = Maths.mix(0.4, 1, Maths.smooth(0.02, 0.3, s.y + 0.1 * a));
    double moss = Maths.smooth(0.55, 0.8, Noise.at(s.x * 3, s.y * 3, s.z * 3, 430)) * 0.5;
    value *= damp;
    s.colour(
        Maths.mix(0.30, 0.13, moss) * value,
        Maths.mix(0.275, 0.16, moss) * value,
        Maths.mix(0.24, 0.06, moss) * value);
    s.gloss = 0.10 * (1.2 - damp);
    s.shine = 12;
    double e = 0.012;
    double dx = Noise.at((s.x + e) * 29, s.y * 33, s.z * 29, 410) - b;
    double dy = Noise.at(s.x * 29, (s.y + e) * 33, s.z * 29, 410) - b;
    double dz = Noise.at(s.x * 29, s.y * 33, (s.z + e) * 29, 410) - b;
    s.lean(-1.1 * dx, -1.1 * dy, -1.1 * dz);
  }

  /** Black iron. */
  static void iron(Surface s) {
    s.colour(0.022, 0.022, 0.024);
    s.gloss = 0.25;
    s.shine = 40;
  }

  /** Bark: furrows that run along the branch. */
  static void bark(Surface s) {
    double a = Noise.at(s.x * 16, s.y * 3.5, s.z * 16, 510);
    double b = Noise.at(s.x * 50, s.y * 12, s.z * 50, 520);
    double value = 0.35 + 1.1 * a + 0.4 * (b - 0.5);
    s.colour(0.17 * value, 0.135 * value, 0.095 * value);
    s.lean(0.9 * (a - 0.5), 0.3 * (b - 0.5), 0.9 * (b - 0.5));
  }

  static void willowLeaf(Surface s) {
    double tone = 0.65 + 0.7 * Noise.unit(s.seed, 21, 4);
    double yellow = Noise.unit(s.seed, 22, 4);
    s.colour((0.10 + 0.10 * yellow) * tone, 0.185 * tone, 0.045 * tone);
    s.through = 0.45;
    s.gloss = 0.08;
    s.shine = 14;
  }

  static void reed(Surface s) {
    double tone = 0.6 + 0.7 * Noise.unit(s.seed, 23, 4);
    double dry = Noise.unit(s.seed, 24, 4);
    s.colour(Maths.mix(0.12, 0.30, dry) * tone, Maths.mix(0.17, 0.24, dry) * tone, 0.065 * tone);
    s.through = 0.25;
  }

  static void grassBlade(Surface s) {
    double tone = 0.5 + 0.8 * Noise.unit(s.seed, 25, 4);
    s.colour(0.085 * tone, 0.12 * tone, 0.038 * tone);
    s.through = 0.3;
  }

  /** Banks and meadow: grass above, wet shingle at the waterline. */
  static void land(Surface s) {
    double a = Noise.fractal(s.x * 1.3, s.z * 1.3, 3, 610);
    double b = Noise.fractal(s.x * 14, s.z * 14, 2, 620);
    double grass = Maths.smooth(0.12, 0.40, s.y + 0.3 * (a - 0.5));
    double value = 0.45 + 0.7 * a + 0.7 * (b - 0.5);
    s.colour(
        Maths.mix(0.10, 0.075, grass) * value,
        Maths.mix(0.09, 0.10, grass) * value,
        Maths.mix(0.075, 0.035, grass) * value);
    s.lean(1.2 * (b - 0.5), 0, 1.2 * (Noise.at(s.x * 21, s.z * 21, 630) - 0.5));
  }

  /** Striped deck-chair canvas. */
  static void canvas(Surface s) {
    boolean stripe = Maths.fraction(s.v / 0.125 + 0.25) < 0.5;
    double weave = 0.92 + 0.16 * Noise.at(s.u * 120, s.v * 120, 710);
    if (stripe) {
      s.colour(0.62 * weave, 0.58 * weave, 0.49 * weave);
    } else {
      s.colour(0.40 * weave, 0.075 * weave, 0.05 * weave);
    }
    s.through = 0.2;
  }

  /** Slates of the roof see {@link Slates}; this is lead and gutters. */
  static void lead(Surface s) {
    double a = Noise.at(s.x * 8, s.y * 8, s.z * 8, 720);
    s.colour(0.07 + 0.04 * a, 0.073 + 0.04 * a, 0.08 + 0.04 * a);
    s.gloss = 0.2;
    s.shine = 16;
  }

  /** The lit room's plaster. */
  static void plaster(Surface s) {
    s.colour(0.62, 0.53, 0.40);
    s.indoors = true;
  }

  static void roomFloor(Surface s) {
    timber(s, 0.30, 0.17, 0.08, 0.5);
    s.indoors = true;
  }

  static void roomOak(Surface s) {
    timber(s, 0.30, 0.15, 0.06, 0.4);
    s.indoors = true;
  }

  /** Bottles, books and crockery: a colour of its own each. */
  static void shelfware(Surface s) {
    double h = Noise.unit(s.seed, 31, 8);
    double v = 0.20 + 0.55 * Noise.unit(s.seed, 32, 8);
    double r = h < 0.35 ? 0.55 : h < 0.6 ? 0.20 : h < 0.8 ? 0.12 : 0.6;
    double g = h < 0.35 ? 0.20 : h < 0.6 ? 0.30 : h < 0.8 ? 0.25 : 0.55;
    double b = h < 0.35 ? 0.08 : h < 0.6 ? 0.12 : h < 0.8 ? 0.32 : 0.45;
    s.colour(r * v, g * v, b * v);
    s.indoors = true;
  }

  /** Framed prints on the café's wall. */
  static void print(Surface s) {
    boolean mount = Math.abs(s.u) > 0.24 || Math.abs(s.v) > 0.17;
    double hill = Maths.smooth(-0.02, 0.02, s.v - 0.08 * Noise.at(s.u * 5, 1.5, s.seed));
    if (mount) {
      s.colour(0.55, 0.50, 0.42);
    } else {
      s.colour(0.10 + 0.22 * hill, 0.14 + 0.22 * hill, 0.15 + 0.25 * hill);
    }
    s.indoors = true;
  }

  static void roomLamp(Surface s) {
    s.colour(0.8, 0.7, 0.5);
    s.lamp(Lights.ROOMS, 9.5, 6.4, 3.2);
    s.indoors = true;
  }

  /** The frosted panes of a lantern. */
  static void lanternGlass(Surface s) {
    s.colour(0.5, 0.45, 0.35);
    double side = s.side == 0 ? s.w : s.u;
    double hot = Maths.exp(-(s.v + 0.02) * (s.v + 0.02) / 0.004 - side * side / 0.0012);
    s.lamp(Lights.LANTERNS, 1.3 + 9 * hot, 0.72 + 5.6 * hot, 0.27 + 2.5 * hot);
  }

  static void ember(Surface s) {
    double a = Noise.at(s.x * 30, s.y * 30, s.z * 30, 810);
    s.colour(0.02, 0.02, 0.02);
    double hot = Maths.smooth(0.2, 0.7, a);
    s.lamp(Lights.BRAZIER, 0.7 + 7 * hot, 0.13 + 2.2 * hot, 0.02 + 0.3 * hot);
  }

  /** Dark cloth. */
  static void coat(Surface s) {
    double a = Noise.at(s.x * 40, s.y * 40, s.z * 40, 820);
    s.colour(0.028 + 0.01 * a, 0.03 + 0.01 * a, 0.04 + 0.01 * a);
  }

  static void skin(Surface s) {
    s.colour(0.42, 0.27, 0.19);
  }
}
