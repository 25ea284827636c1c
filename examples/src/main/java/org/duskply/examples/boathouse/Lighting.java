package org.duskply.examples.boathouse;

import java.util.List;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Sampler;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Vec;

/**
 * How much of each light a place gives back along a ray. What the place looks like is shared by all
 * the lights; each casts its own shadow. One a worker.
 */
final class Lighting {
  private static final double LIFT = 1e-3;

  /** Light weaker than this is followed by chance only. */
  private static final double FAINT = 0.08;

  private final Scene scene;
  private final Sky sky;
  private final Sampler sampler;

  /** Red, green, blue a light. */
  private final double[] sum;

  private final Lamps lamps;
  private final Ray shadow = new Ray();
  private final double[] share = new double[16];

  Lighting(Scene scene, Sky sky, Sampler sampler, double[] sum) {
    this.scene = scene;
    this.sky = sky;
    this.sampler = sampler;
    this.sum = sum;
    lamps = new Lamps(scene, sampler, this);
  }

  void add(int light, double weight, double r, double g, double b) {
    sum[3 * light] += weight * r;
    sum[3 * light + 1] += weight * g;
    sum[3 * light + 2] += weight * b;
  }

  /** All the lights that reach a place, through its texture, towards where the ray came from. */
  void light(Surface at, Ray ray, double weight, int depth) {
    if (at.circuit >= 0) {
      add(at.circuit, weight, at.glowRed, at.glowGreen, at.glowBlue);
    }
    if (at.indoors) {
      indoors(at, weight, depth);
      return;
    }
    skylight(at, weight, depth);
    lamps.shine(at, ray, weight, depth);
  }

  boolean hidden(Surface at, double dx, double dy, double dz, double distance, double side) {
    double lift = LIFT * (1 + at.pixel) * side;
    shadow.from(
        at.x + lift * at.flatX,
        at.y + lift * at.flatY,
        at.z + lift * at.flatZ,
        dx,
        dy,
        dz,
        distance);
    return scene.blocks(shadow);
  }

  /** Light of the sky: rays over the half space in which the place can see it, cosine-weighted. */
  private void skylight(Surface at, double weight, int depth) {
    int count = depth == 0 ? 2 : 1;
    double ax = Math.abs(at.nx) > 0.7 ? 0 : 1;
    double ay = 1 - ax;
    double tx = at.ny * 0 - at.nz * ay;
    double ty = at.nz * ax;
    double tz = at.nx * ay - at.ny * ax;
    double s = 1 / Math.sqrt(tx * tx + ty * ty + tz * tz);
    tx *= s;
    ty *= s;
    tz *= s;
    double bx = at.ny * tz - at.nz * ty;
    double by = at.nz * tx - at.nx * tz;
    double bz = at.nx * ty - at.ny * tx;
    for (int i = 0; i < count; i++) {
      double u = sampler.value(10 + 40 * depth, count, i);
      double v = sampler.value(11 + 40 * depth, count, i);
      double r = Math.sqrt(u);
      double c = r * Maths.cos(2 * Math.PI * v);
      double d = r * Maths.sin(2 * Math.PI * v);
      double e = Math.sqrt(1 - u);
      double dx = c * tx + d * bx + e * at.nx;
      double dy = c * ty + d * by + e * at.ny;
      double dz = c * tz + d * bz + e * at.nz;
      double share = weight / count * (1 - 0.5 * at.through);
      double lean = dx * at.flatX + dy * at.flatY + dz * at.flatZ;
      boolean open = lean > 0 && !hidden(at, dx, dy, dz, 16, 1);
      double[] light = sky.smooth(dx, Math.abs(dy), dz);
      double seen = !open ? 0.10 : dy < 0 ? 0.22 : 1;
      for (int k = 0; k < 2; k++) {
        add(
            k,
            share * seen,
            at.red * light[3 * k],
            at.green * light[3 * k + 1],
            at.blue * light[3 * k + 2]);
      }
    }
  }

  /** The index whose share of a running total holds {@code level}. */
  static int chosen(double[] share, int count, double level) {
    double left = level;
    for (int i = 0; i < count - 1; i++) {
      left -= share[i];
      if (left < 0) {
        return i;
      }
    }
    return count - 1;
  }

  /**
   * Light from one direction: matt, shining through, and the highlight, if nothing is in the way.
   * Faint light is followed by chance, and counted for more when it is.
   */
  void direct(
      int light,
      Surface at,
      Ray ray,
      double strength,
      double dx,
      double dy,
      double dz,
      double distance,
      double r,
      double g,
      double b) {
    double cos = at.nx * dx + at.ny * dy + at.nz * dz;
    double flat = at.flatX * dx + at.flatY * dy + at.flatZ * dz;
    double matt = flat > 0 && cos > 0 ? cos * (1 - 0.4 * at.through) : 0;
    double behind = flat < 0 ? -flat * at.through : 0;
    double share = matt + behind;
    if (share <= 0) {
      return;
    }
    double odds = strength < FAINT ? strength / FAINT : 1;
    double lit = strength / odds;
    if (odds < 1 && sampler.value(400 + light) >= odds) {
      return;
    }
    if (hidden(at, dx, dy, dz, distance, flat > 0 ? 1 : -1)) {
      return;
    }
    double w = lit * share;
    double bright = 0;
    if (at.gloss > 0 && matt > 0) {
      double hx = dx - ray.dx;
      double hy = dy - ray.dy;
      double hz = dz - ray.dz;
      double half = (hx * at.nx + hy * at.ny + hz * at.nz) / Math.sqrt(hx * hx + hy * hy + hz * hz);
      bright = lit * cos * at.gloss * 0.25 * (at.shine + 2) / 8 * Maths.pow(half, at.shine);
    }
    add(
        light,
        1,
        r * (w * at.red + bright),
        g * (w * at.green + bright),
        b * (w * at.blue + bright));
  }

  /** The lit room: all its lamps, the shadow of one of them at a time, and light from the walls. */
  private void indoors(Surface at, double weight, int depth) {
    List<Vec> lamps = scene.roomLamps;
    int count = lamps.size();
    double lit = 0.50;
    double total = 0;
    for (int i = 0; i < count; i++) {
      double x = lamps.get(i).x() - at.x;
      double y = lamps.get(i).y() - at.y;
      double z = lamps.get(i).z() - at.z;
      double square = x * x + y * y + z * z;
      double far = Math.sqrt(square);
      double cos = (x * at.nx + y * at.ny + z * at.nz) / far;
      double down = y > 0 ? 1 : 0.55;
      double part = cos <= 0 ? 0 : 1.6 * down * cos / (square + 0.25);
      total += share[i] = part;
    }
    Vec lamp = lamps.get(chosen(share, count, total * sampler.value(37 + 40 * depth)));
    double x = lamp.x() - at.x;
    double y = lamp.y() - at.y;
    double z = lamp.z() - at.z;
    double far = Math.sqrt(x * x + y * y + z * z);
    if (total > 0 && !hidden(at, x / far, y / far, z / far, far - 0.12, 1)) {
      lit += total;
    }
    add(Lights.ROOMS, weight * lit, at.red, at.green * 0.72, at.blue * 0.42);
  }
}
