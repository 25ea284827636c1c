package org.duskply.examples.boathouse;

import java.util.List;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Sampler;
import org.duskply.examples.trace.Shape;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Vec;

/**
 * Follows one ray from the camera and tells what each light source contributes along it. The place
 * that is hit and its texture are found once and shared by all the lights; each light then casts
 * its own shadow. One a worker: it holds scratch rays, nothing that outlives a sample.
 */
final class Tracer {
  private static final int DEEPEST = 2;
  private static final double FAR = 1e9;
  private static final double LIFT = 1e-3;

  /** Light weaker than this is followed by chance only. */
  private static final double FAINT = 0.08;

  /** Farther out the tarn ends at the trees of the far shore. */
  private static final double SHORE = 150;

  private final Scene scene;
  private final Sky sky = new Sky();
  private final Ray[] rays = new Ray[DEEPEST + 1];
  private final Surface[] places = new Surface[DEEPEST + 1];
  private final Ray shadow = new Ray();
  private final Ray glassRay = new Ray();
  private final Sampler sampler = new Sampler();
  private final double[] edges = new double[Lights.FLASHES];
  private final Vec[] axes = new Vec[Lights.FLASHES];
  private final double[] share = new double[16];
  private final Glare glare;
  private final double pixel;

  /** Red, green, blue a light. */
  final double[] sum = new double[3 * Lights.COUNT];

  Tracer(Scene scene, double pixel) {
    this.scene = scene;
    this.pixel = pixel;
    glare = new Glare(scene);
    for (int i = 0; i <= DEEPEST; i++) {
      rays[i] = new Ray();
      places[i] = new Surface();
    }
    for (int f = 0; f < Lights.FLASHES; f++) {
      edges[f] = Flashes.ALL.get(f).edge();
      axes[f] = Flashes.ALL.get(f).axis();
    }
  }

  /** Adds one sample of a pixel to {@link #sum}; the direction has length 1. */
  void sample(int x, int y, int number, double dx, double dy, double dz) {
    sampler.at(x, y, number);
    rays[0].from(View.EYE.x(), View.EYE.y(), View.EYE.z(), dx, dy, dz, FAR);
    follow(0, 1, 0);
    glare.add(dx, dy, dz, sum);
  }

  /** Follows a ray that is set up in {@code rays[depth]} and adds what it sees, times a weight. */
  private void follow(int depth, double weight, double travelled) {
    Ray ray = rays[depth];
    scene.nearest(ray);
    if (ray.dy < -1e-6) {
      double t = -ray.oy / ray.dy;
      double wx = ray.ox + t * ray.dx;
      double wz = ray.oz + t * ray.dz;
      if (t > 1e-4 && t < ray.t && wx * wx + wz * wz < SHORE * SHORE) {
        flames(ray, t, weight);
        water(depth, t, weight, travelled + t);
        return;
      }
    }
    Shape hit = ray.shape;
    double passed = hit == null ? weight : glass(depth, weight, travelled);
    flames(ray, ray.t, passed);
    if (hit == null) {
      addSky(sky.seen(ray.dx, ray.dy, ray.dz), passed);
      return;
    }
    Surface at = places[depth];
    Shape.look(ray, hit, pixel * (travelled + ray.t), at);
    light(at, ray, passed, depth);
  }

  private void addSky(double[] light, double weight) {
    for (int i = 0; i < 6; i++) {
      sum[i] += weight * light[i];
    }
  }

  private void add(int light, double weight, double r, double g, double b) {
    sum[3 * light] += weight * r;
    sum[3 * light + 1] += weight * g;
    sum[3 * light + 2] += weight * b;
  }

  /** If a pane lies before what was hit, adds its mirror image; returns the weight that passes. */
  private double glass(int depth, double weight, double travelled) {
    Ray ray = rays[depth];
    glassRay.from(ray.ox, ray.oy, ray.oz, ray.dx, ray.dy, ray.dz, ray.t);
    scene.glass.nearest(glassRay);
    Shape pane = glassRay.shape;
    if (pane == null) {
      return weight;
    }
    Surface at = places[depth];
    Shape.look(glassRay, pane, 0, at);
    double cos = -(at.nx * ray.dx + at.ny * ray.dy + at.nz * ray.dz);
    double f = Math.min(1, 0.08 + 0.92 * fifth(1 - cos));
    if (depth < DEEPEST && weight * f > 0.01) {
      mirror(depth, at, 0.002 * (Noise.at(at.u * 3, at.v * 3, at.seed) - 0.5), 0);
      follow(depth + 1, weight * f, travelled + glassRay.t);
    }
    return weight * (1 - f);
  }

  /** Sets up the next ray as the mirror image of this one. */
  private void mirror(int depth, Surface at, double leanX, double leanZ) {
    at.lean(leanX, 0, leanZ);
    Ray ray = rays[depth];
    double twice = 2 * (at.nx * ray.dx + at.ny * ray.dy + at.nz * ray.dz);
    double x = ray.dx - twice * at.nx;
    double y = ray.dy - twice * at.ny;
    double z = ray.dz - twice * at.nz;
    double s = 1 / Math.sqrt(x * x + y * y + z * z);
    rays[depth + 1].from(
        at.x + LIFT * at.flatX,
        at.y + LIFT * at.flatY,
        at.z + LIFT * at.flatZ,
        x * s,
        y * s,
        z * s,
        FAR);
  }

  private static double fifth(double x) {
    double q = x * x;
    return q * q * x;
  }

  /** The tarn: a mirror with ripples that grow unruly near the camera, over dark water. */
  private void water(int depth, double t, double weight, double travelled) {
    Ray ray = rays[depth];
    Surface at = places[depth];
    at.x = ray.ox + t * ray.dx;
    at.y = 0;
    at.z = ray.oz + t * ray.dz;
    at.nx = at.flatX = 0;
    at.ny = at.flatY = 1;
    at.nz = at.flatZ = 0;
    double x = at.x;
    double z = at.z;
    double breeze =
        0.35 + 1.1 * Maths.smooth(0.40, 0.72, Noise.fractal(x * 0.09, z * 0.16, 3, 121));
    double swellX = Noise.at(x * 0.9, z * 1.5, 122) - 0.5;
    double swellZ = Noise.at(x * 0.8, z * 1.7, 123) - 0.5;
    double rippleX = Noise.at(x * 3.2, z * 6.5, 124) - 0.5;
    double rippleZ = Noise.at(x * 2.6, z * 8.0, 125) - 0.5;
    double fineX = sampler.value(91 + 40 * depth) - 0.5;
    double fineZ = sampler.value(92 + 40 * depth) + sampler.value(93 + 40 * depth) - 1;
    double leanX = breeze * (0.012 * swellX + 0.016 * rippleX + 0.014 * fineX);
    double leanZ = breeze * (0.016 * swellZ + 0.030 * rippleZ + 0.020 * fineZ);
    at.lean(leanX, 0, leanZ);
    double cos = Math.max(0.02, -(at.nx * ray.dx + at.ny * ray.dy + at.nz * ray.dz));
    double f = 0.025 + 0.975 * fifth(1 - cos);
    add(Lights.DOME, weight * (1 - f), 0.0030, 0.0085, 0.0110);
    if (depth < DEEPEST && weight * f > 0.004) {
      mirror(depth, at, 0, 0);
      Ray next = rays[depth + 1];
      if (next.dy < 0.003) {
        next.from(next.ox, next.oy, next.oz, next.dx, 0.003, next.dz, FAR);
      }
      follow(depth + 1, weight * f, travelled);
    }
  }

  /** The brazier's flames: light along the ray where it passes the fire, if nothing hides it. */
  private void flames(Ray ray, double before, double weight) {
    Vec b = Furniture.BRAZIER;
    double x = b.x() - ray.ox;
    double z = b.z() - ray.oz;
    double flat = ray.dx * ray.dx + ray.dz * ray.dz;
    double t = (x * ray.dx + z * ray.dz) / Math.max(flat, 1e-9);
    if (t < 0 || t > before + 0.5) {
      return;
    }
    double s = Math.sqrt(flat);
    double across = (x * ray.dz - z * ray.dx) / s;
    double up = ray.oy + t * ray.dy - b.y() - 0.55;
    if (Math.abs(across) > 0.6 || up < -0.15 || up > 1.3) {
      return;
    }
    double curl = Noise.fractal(across * 4 + 9, up * 2.6, 3, 131) - 0.5;
    double bend = across + 0.30 * curl * Math.max(0, up) + 0.05 * up;
    double tongues = Noise.at(bend * 11, up * 1.7 + 4, 132);
    double tall = 0.42 + 0.55 * tongues;
    double high = Math.max(0, up) / tall;
    double wide = 0.27 * (1 - 0.75 * high) * (0.75 + 0.5 * tongues);
    double edge = 1 - Math.abs(bend) / Math.max(wide, 1e-3);
    double body = Maths.smooth(0, 0.75, edge) * (1 - Maths.smooth(0.45, 1.0, high));
    body *= Maths.smooth(-0.12, 0.04, up) * (0.55 + 0.9 * Noise.at(bend * 9, up * 4, 133));
    double core = body * body;
    add(
        Lights.BRAZIER,
        weight,
        2.6 * body + 3.2 * core,
        0.75 * body + 2.0 * core,
        0.08 * body + 0.55 * core);
  }

  /** All the lights that reach a place, through its texture, towards where the ray came from. */
  private void light(Surface at, Ray ray, double weight, int depth) {
    if (at.circuit >= 0) {
      add(at.circuit, weight, at.glowRed, at.glowGreen, at.glowBlue);
    }
    if (at.indoors) {
      indoors(at, weight, depth);
      return;
    }
    skylight(at, weight, depth);
    panes(at, ray, weight, depth);
    lanterns(at, ray, weight, depth);
    brazier(at, ray, weight, depth);
    for (int f = 0; f < Lights.FLASHES; f++) {
      flash(f, at, ray, weight, depth);
    }
  }

  private boolean hidden(
      Surface at, double dx, double dy, double dz, double distance, double side) {
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

  /** What the lit rooms spill: each pane is a rectangle of warm light; one of them is asked. */
  private void panes(Surface at, Ray ray, double weight, int depth) {
    List<Pane> panes = scene.panes;
    double u = 2 * sampler.value(12 + 40 * depth) - 1;
    double v = 2 * sampler.value(13 + 40 * depth) - 1;
    double total = 0;
    for (int i = 0; i < panes.size(); i++) {
      Pane pane = panes.get(i);
      Vec c = pane.centre();
      total += share[i] = shed(pane, c.x() - at.x, c.y() - at.y, c.z() - at.z);
    }
    if (total < 0.002) {
      return;
    }
    Pane pane = panes.get(chosen(panes.size(), total * sampler.value(14 + 40 * depth)));
    Vec h = pane.half();
    Vec k = pane.otherHalf();
    Vec c = pane.centre();
    double x = c.x() + u * h.x() + v * k.x() - at.x;
    double y = c.y() + u * h.y() + v * k.y() - at.y;
    double z = c.z() + u * h.z() + v * k.z() - at.z;
    double far = Math.sqrt(x * x + y * y + z * z);
    direct(
        Lights.ROOMS,
        at,
        ray,
        weight * total,
        x / far,
        y / far,
        z / far,
        far - 0.02,
        1,
        0.60,
        0.27);
  }

  /** Light of a pane on a place that faces it; the last term keeps it finite close to the glass. */
  private static double shed(Pane pane, double x, double y, double z) {
    Vec out = pane.outward();
    double square = x * x + y * y + z * z;
    double facing = -(x * out.x() + y * out.y() + z * out.z()) + 0.1;
    if (facing <= 0) {
      return 0;
    }
    double area = pane.area();
    return 2.6 * area * facing / Math.sqrt(square) / (Math.PI * square + 0.4 * area);
  }

  /** The index whose share of a running total holds {@code level}. */
  private int chosen(int count, double level) {
    double left = level;
    for (int i = 0; i < count - 1; i++) {
      left -= share[i];
      if (left < 0) {
        return i;
      }
    }
    return count - 1;
  }

  private void lanterns(Surface at, Ray ray, double weight, int depth) {
    List<Vec> lanterns = scene.lanterns;
    double total = 0;
    for (int i = 0; i < lanterns.size(); i++) {
      total += share[i] = lantern(lanterns.get(i), at);
    }
    if (total < 0.003 || at.circuit == Lights.LANTERNS) {
      return;
    }
    Vec lamp = lanterns.get(chosen(lanterns.size(), total * sampler.value(29 + 40 * depth)));
    double x = lamp.x() - at.x;
    double y = lamp.y() + 0.10 * (sampler.value(30 + 40 * depth) - 0.5) - at.y;
    double z = lamp.z() - at.z;
    double far = Math.sqrt(x * x + y * y + z * z);
    direct(
        Lights.LANTERNS,
        at,
        ray,
        weight * total,
        x / far,
        y / far,
        z / far,
        far - 0.17,
        1,
        0.56,
        0.22);
  }

  /** Light of a lantern at a distance; little goes straight down through its foot. */
  private static double lantern(Vec lamp, Surface at) {
    double x = lamp.x() - at.x;
    double y = lamp.y() - at.y;
    double z = lamp.z() - at.z;
    double square = x * x + y * y + z * z;
    double facing = x * at.nx + y * at.ny + z * at.nz;
    if (square > 121 || (facing <= 0 && at.through == 0)) {
      return 0;
    }
    double far = Math.sqrt(square);
    double lit = 0.85 / (square + 0.02) * (1 - Maths.smooth(7, 11, far));
    return lit * (1 - 0.85 * Maths.smooth(0.55, 0.95, y / far));
  }

  private void brazier(Surface at, Ray ray, double weight, int depth) {
    Vec b = Furniture.BRAZIER;
    double x = b.x() + 0.34 * (sampler.value(31 + 40 * depth) - 0.5) - at.x;
    double y = b.y() + 0.66 + 0.40 * sampler.value(32 + 40 * depth) - at.y;
    double z = b.z() + 0.34 * (sampler.value(33 + 40 * depth) - 0.5) - at.z;
    double square = x * x + y * y + z * z;
    double far = Math.sqrt(square);
    double lit = 2.3 / (square + 0.08) * (1 - Maths.smooth(9, 14, far));
    if (lit > 0.003 && at.circuit != Lights.BRAZIER) {
      direct(
          Lights.BRAZIER,
          at,
          ray,
          weight * lit,
          x / far,
          y / far,
          z / far,
          far - 0.05,
          1,
          0.42,
          0.10);
    }
  }

  private void flash(int f, Surface at, Ray ray, double weight, int depth) {
    Flash flash = Flashes.ALL.get(f);
    Vec head = flash.at();
    double x = head.x() - at.x;
    double y = head.y() - at.y;
    double z = head.z() - at.z;
    double square = x * x + y * y + z * z;
    double far = Math.sqrt(square);
    Vec axis = axes[f];
    double cos = -(x * axis.x() + y * axis.y() + z * axis.z()) / far;
    double edge = edges[f];
    double reach = flash.reach();
    if (cos <= edge || far >= reach) {
      return;
    }
    double beam = Maths.smooth(edge, 0.35 * edge + 0.65, cos);
    double lit = flash.power() / square * beam * (1 - Maths.smooth(0.6 * reach, reach, far));
    if (lit < 0.002) {
      return;
    }
    double r = flash.radius();
    x += r * (2 * sampler.value(34 + 40 * depth) - 1);
    y += r * (2 * sampler.value(35 + 40 * depth) - 1);
    z += r * (2 * sampler.value(36 + 40 * depth) - 1);
    double d = Math.sqrt(x * x + y * y + z * z);
    direct(
        Lights.FLASH + f,
        at,
        ray,
        weight * lit,
        x / d,
        y / d,
        z / d,
        d - (f == Flashes.WITH_PERSON ? 0.75 : 0),
        flash.red(),
        flash.green(),
        flash.blue());
  }

  /**
   * Light from one direction: matt, shining through, and the highlight, if nothing is in the way.
   * Faint light is followed by chance, and counted for more when it is.
   */
  private void direct(
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
    Vec lamp = lamps.get(chosen(count, total * sampler.value(37 + 40 * depth)));
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
