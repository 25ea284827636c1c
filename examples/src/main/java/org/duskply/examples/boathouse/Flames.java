package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Vec;

/** The fire in the brazier: no solid thing but light, on a plane that always faces the ray. */
final class Flames {
  private Flames() {}

  /** The brazier's flames: light along the ray where it passes the fire, if nothing hides it. */
  static void add(Ray ray, double before, double weight, double[] sum) {
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
    int at = 3 * Lights.BRAZIER;
    sum[at] += weight * (2.6 * body + 3.2 * core);
    sum[at + 1] += weight * (0.75 * body + 2.0 * core);
    sum[at + 2] += weight * (0.08 * body + 0.55 * core);
  }
}
