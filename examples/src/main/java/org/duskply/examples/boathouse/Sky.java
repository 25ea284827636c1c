package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;

/**
 * What lies beyond the scene in every direction: the evening sky with its clouds, and ranges of
 * hills that fade into the haze. Two lights: the blue dome, and the afterglow left of the middle.
 */
final class Sky {
  private static final double GLOW_BEARING = -0.30;

  /** Bearings are looked up in steps of a turn over this many. */
  private static final int BEARINGS = 1 << 15;

  private static final float[][] SKYLINES = skylines();

  /** Radiance of the dome, then of the afterglow: red, green, blue each. */
  private final double[] light = new double[6];

  /** Clear sky, for the light that falls on things. */
  double[] smooth(double dx, double dy, double dz) {
    clear(dx, Math.max(0, dy), dz);
    return light;
  }

  /** Sky and hills as seen. */
  double[] seen(double dx, double dy, double dz) {
    double flat = Math.sqrt(dx * dx + dz * dz);
    double tangent = dy / Math.max(flat, 1e-9);
    double bearing = Maths.angle(dx, dz);
    int range = range(tangent, bearing);
    if (range >= 0) {
      hill(range, tangent, bearing);
      return light;
    }
    clear(dx, Math.max(dy, 0), dz);
    clouds(dx, Math.max(dy, 0), dz);
    return light;
  }

  private void clear(double dx, double dy, double dz) {
    double e = Math.sqrt(dy);
    double low = Maths.exp(-dy * 9);
    double high = Maths.smooth(0, 1, e);
    light[0] = Maths.mix(0.155, 0.026, high) + 0.095 * low;
    light[1] = Maths.mix(0.275, 0.078, high) + 0.115 * low;
    light[2] = Maths.mix(0.465, 0.235, high) + 0.075 * low;
    double flat = Math.sqrt(dx * dx + dz * dz) + 1e-9;
    double facing = (dx * Maths.sin(GLOW_BEARING) + dz * Maths.cos(GLOW_BEARING)) / flat;
    double lobe = Maths.exp(-2.6 * (1 - facing)) * 0.85 + 0.15;
    double band = Maths.exp(-dy * 7.5);
    double blush = Maths.exp(-dy * 4.2);
    light[3] = lobe * (0.66 * band + 0.16 * blush);
    light[4] = lobe * (0.255 * band + 0.055 * blush);
    light[5] = lobe * (0.075 * band + 0.075 * blush);
  }

  /**
   * Long banks of cloud, greyer than the sky in the dome's light, lit from below by the afterglow.
   */
  private void clouds(double dx, double dy, double dz) {
    double s = 1 / (dy + 0.10);
    double x = dx * s;
    double z = dz * s;
    double warp = Noise.fractal(x * 0.7 + 3, z * 1.6, 3, 84);
    double body = Noise.fractal(x * 0.62 + 0.9 * warp + 1.7, z * 1.9 + 0.5 * warp, 6, 81);
    double wisps = Noise.fractal(x * 2.6 + warp, z * 8.5, 4, 82);
    double field = body + 0.22 * (wisps - 0.5);
    double cover = Maths.smooth(0.47, 0.68, field);
    double thick = Maths.smooth(0.52, 0.80, field);
    double near = Maths.smooth(0.005, 0.06, dy);
    cover *= near * 0.92;
    double shade = 1.12 - 0.62 * thick;
    light[0] = Maths.mix(light[0], (0.62 * light[0] + 0.058) * shade, cover);
    light[1] = Maths.mix(light[1], (0.62 * light[1] + 0.062) * shade, cover);
    light[2] = Maths.mix(light[2], (0.60 * light[2] + 0.080) * shade, cover);
    double facing =
        (dx * Maths.sin(GLOW_BEARING) + dz * Maths.cos(GLOW_BEARING))
            / Math.sqrt(dx * dx + dz * dz + 1e-9);
    double lobe = Maths.exp(-1.5 * (1 - facing)) * Maths.exp(-dy * 2.6);
    double rim = cover * (1 - 0.72 * thick);
    double belly = cover * (0.45 + 0.55 * wisps);
    light[3] = light[3] * (1 - 0.55 * thick * near) + lobe * (0.55 * rim + 0.20 * belly);
    light[4] = light[4] * (1 - 0.60 * thick * near) + lobe * (0.185 * rim + 0.052 * belly);
    light[5] = light[5] * (1 - 0.55 * thick * near) + lobe * (0.120 * rim + 0.060 * belly);
  }

  /** The nearest range that stands in this direction, −1 for open sky. */
  private static int range(double tangent, double bearing) {
    for (int i = 0; i < 5; i++) {
      if (tangent < skyline(i, bearing)) {
        return i;
      }
    }
    return -1;
  }

  private static double skyline(int range, double bearing) {
    int i = (int) ((bearing / (2 * Math.PI) + 0.5) * BEARINGS);
    return SKYLINES[range][i & (BEARINGS - 1)];
  }

  /** The height of each range in every direction, as a tangent. */
  private static float[][] skylines() {
    float[][] all = new float[5][BEARINGS];
    for (int i = 0; i < BEARINGS; i++) {
      double bearing = ((i + 0.5) / BEARINGS - 0.5) * 2 * Math.PI;
      all[0][i] = (float) shore(bearing);
      for (int range = 1; range < 5; range++) {
        all[range][i] = (float) ridge(range, bearing);
      }
    }
    return all;
  }

  /** Trees on the far shore: pointed tops of different heights. */
  private static double shore(double bearing) {
    double grove = Noise.fractal(bearing * 9, 3.3, 3, 85);
    double cell = bearing * 260;
    double tip = 0;
    for (int k = -1; k <= 1; k++) {
      int i = (int) Math.floor(cell) + k;
      double middle = i + 0.2 + 0.6 * Noise.unit(i, 2, 86);
      double tall = 0.006 + 0.016 * Noise.unit(i, 3, 86) * grove * 1.6;
      double width = 0.55 + 0.5 * Noise.unit(i, 4, 86);
      tip = Math.max(tip, tall * (1 - Math.abs(cell - middle) / width));
    }
    return 0.004 + 0.013 * grove + tip;
  }

  private static double ridge(int range, double bearing) {
    double shape =
        Noise.fractal(bearing * (6.5 - range) * 0.62 + 5 * range, 0.7 * range, 6, 87 + range);
    double crag = Noise.fractal(bearing * 40, 2.0 + range, 4, 92 + range);
    double lift = range == 1 ? 0.012 : range == 2 ? 0.028 : range == 3 ? 0.050 : 0.062;
    double swell = range == 1 ? 0.07 : range == 2 ? 0.105 : range == 3 ? 0.14 : 0.165;
    double bowl = range >= 3 ? 0.055 * Maths.smooth(0.0, 0.45, Math.abs(bearing + 0.02)) : 0;
    return lift + swell * Math.max(0, shape - 0.28) + bowl + 0.008 * (crag - 0.5) * (range - 0.4);
  }

  private void hill(int range, double tangent, double bearing) {
    double top = skyline(range, bearing);
    double far = range / 4.0;
    double rough = Noise.fractal(bearing * 60, tangent * 160, 4, 97 + range);
    double value = 0.72 + 0.56 * rough;
    double mist =
        0.62 * Maths.exp(-Math.max(0, tangent) / (0.012 + 0.012 * far)) * (range == 0 ? 0.35 : 1);
    double haze =
        Maths.hold(0.05 + 0.80 * far * (1 - 0.15 * far) + mist * (0.4 + 0.6 * far), 0, 0.94);
    double lit = value * (0.75 + 0.25 * Maths.smooth(0, top + 1e-6, tangent));
    light[0] = Maths.mix(0.012 * lit, 0.150, haze);
    light[1] = Maths.mix(0.020 * lit, 0.205, haze);
    light[2] = Maths.mix(0.024 * lit, 0.315, haze);
    double lobe = 0.2 + 0.8 * Maths.exp(-3 * (1 - Maths.cos(bearing - GLOW_BEARING)));
    double glow = lobe * haze * haze;
    light[3] = 0.20 * glow;
    light[4] = 0.085 * glow;
    light[5] = 0.060 * glow;
  }
}
