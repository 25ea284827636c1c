package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Facet;
import org.duskply.examples.trace.Leaf;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Rod;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Vec;

/** What grows: the banks, grass, reeds, the willow, and spruces behind the house. */
final class Nature {
  static final Vec WILLOW = new Vec(8.0, 0.55, 15.6);
  private static final double CELL = 0.45;

  private final Scenery scenery;

  private Nature(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    Nature nature = new Nature(scenery);
    nature.land();
    nature.grass();
    nature.reeds(-4.35, 7.7, 0.62, 0.7, 240);
    nature.reeds(4.6, 8.4, 0.85, 0.55, 260);
    nature.reeds(6.9, 12.6, 1.2, 0.6, 260);
    new Willow(scenery).build();
    nature.spruces();
  }

  /** Height of the ground over the water; below 0 there is none to see. */
  static double height(double x, double z) {
    double rough = 0.35 * (Noise.fractal(x * 0.5, z * 0.5, 3, 71) - 0.5);
    double left = Math.min(-4.6 - x + 0.22 * (z - 18), Math.min(z - 13.6, 20.5 - z));
    double h = rise(left + rough, 0.62, 0.02);
    double back = Math.min(z - 25.5 - 0.12 * x, 1.4 * (x + 9.8 - 0.15 * (z - 30)));
    h = Math.max(h, rise(back + 2 * rough, 0.5, 0.07));
    double ix = (x + 18.6) / 4.6;
    double iz = (z - 36) / 4.2;
    h = Math.max(h, rise(4 * (1 - Math.sqrt(ix * ix + iz * iz)) + rough, 0.4, 0.08));
    double dx = (x - 9.8) / 2.9;
    double dz = (z - 15.6) / 3.2;
    double right = 2.4 * (1 - Math.sqrt(dx * dx + dz * dz)) + rough;
    h = Math.max(h, rise(right, 0.55, 0.10));
    return h + 0.10 * (Noise.fractal(x * 1.7, z * 1.7, 2, 72) - 0.5);
  }

  private static double rise(double inland, double bank, double slope) {
    return -0.4
        + (bank + 0.4) * Maths.smooth(-0.7, 0.9, inland)
        + slope * Math.max(0, inland - 0.5);
  }

  private void land() {
    for (double z = 12; z < 46; z += CELL) {
      for (double x = -26; x < 28; x += CELL) {
        double most = Math.max(height(x, z), height(x + CELL, z + CELL));
        if (Math.abs(x) < 0.56 * z + 2 && Math.max(most, height(x, z + CELL)) > -0.2) {
          cell(x, z, CELL);
        }
      }
    }
  }

  private void cell(double x, double z, double step) {
    Facet.Corner a = ground(x, z);
    Facet.Corner b = ground(x + step, z);
    Facet.Corner c = ground(x + step, z + step);
    Facet.Corner d = ground(x, z + step);
    scenery.add(new Facet(a, b, c, Textures::land, 1));
    scenery.add(new Facet(a, c, d, Textures::land, 1));
  }

  private static Facet.Corner ground(double x, double z) {
    double e = 0.05;
    double y = height(x, z);
    Vec facing = new Vec((y - height(x + e, z)) / e, 1, (y - height(x, z + e)) / e).unit();
    return new Facet.Corner(new Vec(x, y, z), facing, x, z);
  }

  private void grass() {
    for (int i = 0; i < 14000; i++) {
      double z = 12.2 + 11 * Noise.unit(i, 1, 73);
      double x = (Noise.unit(i, 2, 73) - 0.5) * 1.12 * z;
      double y = height(x, z);
      boolean paved = x < Waterside.QUAY_RIGHT + 0.1 && z > 13 && z < 18;
      Vec local = new Vec(x, House.FLOOR, z);
      double hx = House.AXES.x(local);
      double hz = House.AXES.z(local);
      boolean built =
          hx > Waterside.DECK_LEFT - 0.1 && hx < 1.7 && hz > -2.8 && hz < House.LENGTH + 0.7;
      if (y < 0.10 || paved || built) {
        continue;
      }
      double tall = 0.07 + 0.16 * Noise.unit(i, 3, 73) * Noise.fractal(x, z, 2, 74);
      blade(new Vec(x, y - 0.01, z), tall, 0.010, i, 73, true);
    }
  }

  private void blade(Vec foot, double tall, double wide, int i, int seed, boolean grass) {
    double a = 2 * Math.PI * Noise.unit(i, 4, seed);
    double lean = 0.35 * Noise.unit(i, 5, seed) * tall;
    Vec tip = new Vec(lean * Maths.cos(a), tall, lean * Maths.sin(a)).times(0.5);
    double b = 2 * Math.PI * Noise.unit(i, 6, seed);
    Vec side = new Vec(Maths.cos(b), 0, Maths.sin(b)).times(wide);
    Vec across = side.minus(tip.times(side.dot(tip) / tip.dot(tip)));
    scenery.add(
        Leaf.pointed(
            foot.plus(tip),
            tip,
            across,
            grass ? Textures::grassBlade : Textures::reed,
            scenery.seed()));
  }

  /** A stand of reeds: stems, long bent blades, here and there a brown head. */
  private void reeds(double x, double z, double wide, double deep, int count) {
    int seed = 75 + (int) (x * 10);
    for (int i = 0; i < count; i++) {
      double a = 2 * Math.PI * Noise.unit(i, 1, seed);
      double r = Math.sqrt(Noise.unit(i, 2, seed));
      Vec foot = new Vec(x + wide * r * Maths.cos(a), -0.1, z + deep * r * Maths.sin(a));
      double tall = (0.75 + 0.75 * Noise.unit(i, 3, seed)) * (1.15 - 0.45 * r);
      blade(foot, tall + 0.1, 0.014, i, seed, false);
      if (i % 9 == 0) {
        Vec lean =
            new Vec(0.1 * (Noise.unit(i, 7, seed) - 0.5), 1, 0.1 * (Noise.unit(i, 8, seed) - 0.5));
        Vec top = foot.plus(lean.times(tall + 0.25));
        scenery.rod(foot, top, 0.006, Textures::reed);
        Vec low = foot.plus(lean.times(tall + 0.08));
        scenery.add(new Rod(low, top, 0.017, 0.014, Textures::tarred, scenery.seed()));
      }
    }
  }

  private void spruces() {
    double[][] places = {
      {-18.6, 34, 11.5}, {-16.6, 37, 8.5}, {-20.5, 37, 12.5}, {-8.6, 39, 8.2}, {-6.7, 41, 6.2},
      {-10.6, 43, 6.8}, {14.0, 33, 6.5}, {16.6, 31, 9.0}, {19.6, 36, 8.5}, {12.2, 38, 7.5}
    };
    for (int i = 0; i < places.length; i++) {
      double x = places[i][0];
      double z = places[i][1];
      spruce(new Vec(x, Math.max(0.3, height(x, z)), z), places[i][2], i);
    }
  }

  private void spruce(Vec foot, double tall, int number) {
    scenery.add(
        new Rod(foot, foot.plus(new Vec(0, tall, 0)), 0.16, 0.02, Textures::bark, scenery.seed()));
    int whorls = (int) (tall * 4.2);
    for (int w = 0; w < whorls; w++) {
      double k = (w + 0.5) / whorls;
      double reach = (0.92 - 0.9 * k) * tall * 0.20 + 0.10;
      for (int b = 0; b < 8; b++) {
        int id = number * 4096 + w * 16 + b;
        double a = 2 * Math.PI * (b / 8.0 + Noise.unit(id, 1, 76));
        double r = reach * (0.45 + 0.75 * Noise.unit(id, 2, 76));
        double y = tall * (0.08 + 0.92 * k) + 0.2 * (Noise.unit(id, 3, 76) - 0.5);
        double drop = 0.25 + 0.35 * Noise.unit(id, 4, 76) - 0.5 * k;
        twigs(foot.plus(new Vec(0, y, 0)), a, r, drop, id);
      }
    }
  }

  /** A branch: twigs that fan out from it to both sides and hang a little. */
  private void twigs(Vec root, double bearing, double reach, double drop, int id) {
    Vec way = new Vec(Maths.cos(bearing), -drop, Maths.sin(bearing)).times(reach);
    Vec aside = new Vec(-Maths.sin(bearing), 0, Maths.cos(bearing));
    for (int t = 0; t < 6; t++) {
      double k = 0.25 + 0.15 * t;
      double turn = (t & 1) == 0 ? 0.55 : -0.55;
      double size = (0.16 + 0.24 * reach * (1.1 - k)) * (0.8 + 0.4 * Noise.unit(id, 10 + t, 76));
      Vec tip = way.unit().plus(aside.times(turn)).plus(new Vec(0, -0.25, 0)).unit().times(size);
      Vec flat =
          aside.plus(new Vec(0, 0.6 * (Noise.unit(id, 20 + t, 76) - 0.2), 0)).times(0.3 * size);
      Vec across = flat.minus(tip.times(flat.dot(tip) / tip.dot(tip)));
      Vec at = root.plus(way.times(k)).plus(tip.times(0.5));
      scenery.add(Leaf.pointed(at, tip, across, Nature::needles, scenery.seed()));
    }
  }

  private static void needles(Surface s) {
    double tone = 0.5 + 0.6 * Noise.unit(s.seed, 27, 4);
    s.colour(0.035 * tone, 0.06 * tone, 0.032 * tone);
    s.through = 0.1;
  }
}
