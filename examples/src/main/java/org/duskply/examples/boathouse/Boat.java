package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Block;
import org.duskply.examples.trace.Facet;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Vec;

/** A clinker-built rowing boat with a transom, three thwarts and its oars shipped. */
final class Boat {
  static final Axes AXES = Axes.turned(new Vec(1.55, 0, 9.3), 62);
  static final double LENGTH = 4.1;
  private static final double BEAM = 0.68;
  private static final int FRAMES = 36;
  private static final int STRAKES = 7;
  private static final int FINE = 3;

  private final Scenery scenery;

  private Boat(Scenery scenery) {
    this.scenery = scenery;
  }

  static void build(Scenery scenery) {
    Boat boat = new Boat(scenery);
    boat.hull();
    boat.fittings();
  }

  /**
   * A point of the hull: {@code s} from the transom (0) to the stem (1), {@code t} keel to gunwale.
   */
  static Vec point(double s, double t, double side) {
    double z = (s - 0.45) * LENGTH;
    double fore = Maths.smooth(0.45, 1, s);
    double aft = 1 - Maths.smooth(-0.35, 0.4, s);
    double beam = BEAM * (1 - fore * fore) * (1 - 0.75 * aft);
    double sheer = 0.42 + 0.30 * Maths.pow(Math.max(0, s - 0.35) / 0.65, 2) + 0.10 * aft;
    double keel = -0.12 + 0.30 * Maths.pow(Math.max(0, s - 0.72) / 0.28, 3) + 0.06 * aft;
    double round = Maths.sin(t * Math.PI / 2);
    double width = beam * Maths.pow(round, 0.75) * (1 + 0.06 * t) + 0.012;
    double height = keel + (sheer - keel) * (0.25 * t + 0.75 * t * t);
    double rake = 0.22 * t * Maths.smooth(0.8, 1, s);
    return AXES.point(side * width, height, z + rake);
  }

  private void hull() {
    int rows = STRAKES * FINE;
    for (int side = -1; side <= 1; side += 2) {
      for (int i = 0; i < FRAMES; i++) {
        for (int j = 0; j < rows; j++) {
          patch(i, j, rows, side);
        }
      }
    }
    for (int j = 0; j < rows; j++) {
      transom(j, rows);
    }
  }

  private void patch(int i, int j, int rows, int side) {
    Facet.Corner a = corner(i, j, rows, side);
    Facet.Corner b = corner(i + 1, j, rows, side);
    Facet.Corner c = corner(i + 1, j + 1, rows, side);
    Facet.Corner d = corner(i, j + 1, rows, side);
    scenery.add(new Facet(a, b, c, Boat::paint, side + 2));
    scenery.add(new Facet(a, c, d, Boat::paint, side + 2));
  }

  private static Facet.Corner corner(int i, int j, int rows, int side) {
    double s = (double) i / FRAMES;
    double t = (double) j / rows;
    double e = 0.01;
    Vec along = point(Math.min(1, s + e), t, side).minus(point(Math.max(0, s - e), t, side));
    Vec up = point(s, Math.min(1, t + e), side).minus(point(s, Math.max(0, t - e), side));
    Vec facing = up.cross(along).times(side);
    double length = Math.max(1e-9, facing.length());
    return new Facet.Corner(point(s, t, side), facing.times(1 / length), s * LENGTH, t);
  }

  private void transom(int j, int rows) {
    double t0 = (double) j / rows;
    double t1 = (double) (j + 1) / rows;
    Vec out = AXES.ahead().times(-1);
    Facet.Corner a = new Facet.Corner(point(0, t0, -1), out, 0, 0.99);
    Facet.Corner b = new Facet.Corner(point(0, t0, 1), out, 1, 0.99);
    Facet.Corner c = new Facet.Corner(point(0, t1, 1), out, 1, 0.99);
    Facet.Corner d = new Facet.Corner(point(0, t1, -1), out, 0, 0.99);
    scenery.add(new Facet(a, b, c, Boat::varnish, 7));
    scenery.add(new Facet(a, c, d, Boat::varnish, 7));
  }

  /** Varnished strakes, each casting a line on the one below; a white sheer strake on top. */
  private static void paint(Surface s) {
    varnish(s);
    Vec p = new Vec(s.x, s.y, s.z);
    boolean outside = AXES.x(p) * (s.nx * AXES.right().x() + s.nz * AXES.right().z()) > 0;
    double rows = s.v * STRAKES;
    int strake = (int) Math.min(STRAKES - 1, Math.floor(rows));
    double up = rows - strake;
    double value = 0.85 + 0.3 * Noise.unit(strake, 3, 61);
    if (outside && strake == STRAKES - 1) {
      s.colour(0.60, 0.58, 0.52);
      s.gloss = 0.25;
      s.shine = 50;
    }
    s.tone(value * Maths.mix(0.35, 1, Maths.smooth(0, 0.16, up)));
    s.lean(0, (up < 0.12 ? -0.6 : 0.16), 0);
    if (!outside) {
      s.tone(0.9);
      double rib = Maths.fraction(s.u / 0.30);
      s.tone(rib < 0.12 ? 1.25 : rib < 0.18 ? 0.6 : 1);
    }
  }

  private static void varnish(Surface s) {
    double grain = Noise.at(s.u * 1.5, s.v * 60, 62 + s.seed);
    double value = 0.8 + 0.5 * (grain - 0.5);
    s.colour(0.40 * value, 0.165 * value, 0.055 * value);
    s.gloss = 0.35;
    s.shine = 60;
  }

  private void fittings() {
    for (int side = -1; side <= 1; side += 2) {
      for (int i = 0; i < FRAMES; i++) {
        Vec a = point((double) i / FRAMES, 1, side).plus(new Vec(0, 0.012, 0));
        Vec b = point((i + 1.0) / FRAMES, 1, side).plus(new Vec(0, 0.012, 0));
        scenery.rod(a, b, 0.026, Textures::oak);
      }
    }
    double[][] thwarts = {{0.06, 0.26}, {0.40, 0.20}, {0.66, 0.20}};
    for (double[] thwart : thwarts) {
      double z = (thwart[0] + 0.03 - 0.45) * LENGTH;
      Vec edge = point(thwart[0] + 0.03, 0.72, 1);
      double half = AXES.x(edge) - 0.01;
      scenery.add(
          new Block(
              AXES.at(0, 0.29, z), 2 * half, 0.035, thwart[1], Textures::oak, scenery.seed()));
    }
    for (int side = -1; side <= 1; side += 2) {
      Vec grip = AXES.point(0.10 * side, 0.42, -1.35);
      Vec throat = AXES.point(0.30 * side, 0.36, 0.85);
      scenery.rod(grip, throat, 0.021, Textures::oak);
      Axes blade = Axes.along(throat, AXES.point(0.34 * side, 0.35, 1.35));
      scenery.add(new Block(blade, 0.55, 0.015, 0.13, Textures::oak, scenery.seed()));
    }
    Vec stem = point(1, 1, 1);
    Vec ring = new Vec(-0.75, 0.62, 9.9);
    Vec sag = stem.towards(ring, 0.5).plus(new Vec(0, -0.35, 0));
    Vec before = stem;
    for (int i = 1; i <= 10; i++) {
      double k = i / 10.0;
      Vec next = stem.towards(sag, k).towards(sag.towards(ring, k), k);
      scenery.rod(before, next, 0.011, Textures::reed);
      before = next;
    }
  }
}
