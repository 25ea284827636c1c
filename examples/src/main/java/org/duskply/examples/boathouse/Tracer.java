package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Sampler;
import org.duskply.examples.trace.Shape;
import org.duskply.examples.trace.Surface;

/**
 * Follows one ray from the camera and tells what each light source contributes along it. The place
 * that is hit and its texture are found once and shared by all the lights ({@link Lighting}). One a
 * worker: it holds scratch rays, nothing that outlives a sample.
 */
final class Tracer {
  private static final int DEEPEST = 2;
  private static final double FAR = 1e9;
  private static final double LIFT = 1e-3;

  /** Farther out the tarn ends at the trees of the far shore. */
  private static final double SHORE = 150;

  private final Scene scene;
  private final Sky sky = new Sky();
  private final Ray[] rays = new Ray[DEEPEST + 1];
  private final Surface[] places = new Surface[DEEPEST + 1];
  private final Ray glassRay = new Ray();
  private final Sampler sampler = new Sampler();
  private final Glare glare;
  private final Lighting lighting;
  private final double pixel;

  /** Red, green, blue a light. */
  final double[] sum = new double[3 * Lights.COUNT];

  Tracer(Scene scene, double pixel) {
    this.scene = scene;
    this.pixel = pixel;
    glare = new Glare(scene);
    lighting = new Lighting(scene, sky, sampler, sum);
    for (int i = 0; i <= DEEPEST; i++) {
      rays[i] = new Ray();
      places[i] = new Surface();
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
        Flames.add(ray, t, weight, sum);
        water(depth, t, weight, travelled + t);
        return;
      }
    }
    Shape hit = ray.shape;
    double passed = hit == null ? weight : glass(depth, weight, travelled);
    Flames.add(ray, ray.t, passed, sum);
    if (hit == null) {
      addSky(sky.seen(ray.dx, ray.dy, ray.dz), passed);
      return;
    }
    Surface at = places[depth];
    Shape.look(ray, hit, pixel * (travelled + ray.t), at);
    lighting.light(at, ray, passed, depth);
  }

  private void addSky(double[] light, double weight) {
    for (int i = 0; i < 6; i++) {
      sum[i] += weight * light[i];
    }
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
    lighting.add(Lights.DOME, weight * (1 - f), 0.0030, 0.0085, 0.0110);
    if (depth < DEEPEST && weight * f > 0.004) {
      mirror(depth, at, 0, 0);
      Ray next = rays[depth + 1];
      if (next.dy < 0.003) {
        next.from(next.ox, next.oy, next.oz, next.dx, 0.003, next.dz, FAR);
      }
      follow(depth + 1, weight * f, travelled);
    }
  }
}
