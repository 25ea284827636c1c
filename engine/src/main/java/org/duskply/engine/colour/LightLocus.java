package org.duskply.engine.colour;

/**
 * The chromaticities of lights by their temperature: glowing bodies up to 4000 K, daylight from
 * 5000 K, and between the two a mixture of both.
 *
 * <pre>
 * T ≤ 4000   Planckian locus, the cubics of Kang et al. 2002 (J. Korean Phys. Soc. 41, 865–871)
 * T ≥ 5000   CIE daylight locus (CIE 15)
 * between    p + (T − 4000)/1000·(d − p), on x and on y
 * </pre>
 *
 * <p>Temperatures run from {@value #WARMEST} to {@value #COOLEST} K; the cubics stay within 6·10⁻⁴
 * of Planck's law, and meet within 8·10⁻⁵ where one takes over from another.
 */
public final class LightLocus {
  /** The least temperature for which the Planckian cubics are made, in kelvin. */
  public static final double WARMEST = 1667;

  /** The greatest temperature for which either locus is defined, in kelvin. */
  public static final double COOLEST = 25_000;

  private static final double GLOWING_TO = 4000;
  private static final double DAYLIGHT_FROM = 5000;

  private LightLocus() {}

  /** Chromaticity (x, y) of the light of that temperature. */
  public static double[] at(double kelvin) {
    checkRange(kelvin);
    return mixed(kelvin);
  }

  /**
   * Chromaticity (x, y) beside the locus: {@code duv} away from it in CIE 1960 (u, v), along its
   * normal at that temperature; above 0 on the green side, below on the magenta side.
   */
  public static double[] beside(double kelvin, double duv) {
    double[] here = at(kelvin);
    if (duv == 0) {
      return here;
    }
    double[] warmer = uv(mixed(kelvin - 1));
    double[] cooler = uv(mixed(kelvin + 1));
    double alongU = warmer[0] - cooler[0];
    double alongV = warmer[1] - cooler[1];
    double length = Math.sqrt(alongU * alongU + alongV * alongV);
    double[] uv = uv(here);
    // Warmer is towards greater u, so that green is a quarter turn to the left of it.
    return xy(uv[0] - duv * alongV / length, uv[1] + duv * alongU / length);
  }

  /** Chromaticity (x, y) of a glowing body, by Kang's cubics; 1667 to 25000 K. */
  public static double[] planckian(double kelvin) {
    double k = 1e3 / kelvin;
    double x =
        kelvin <= 4000
            ? 0.179910 + k * (0.8776956 + k * (-0.2343589 - k * 0.2661239))
            : 0.240390 + k * (0.2226347 + k * (2.1070379 - k * 3.0258469));
    return new double[] {x, planckianY(kelvin, x)};
  }

  private static double planckianY(double kelvin, double x) {
    if (kelvin <= 2222) {
      return -0.20219683 + x * (2.18555832 + x * (-1.34811020 - x * 1.1063814));
    }
    if (kelvin <= 4000) {
      return -0.16748867 + x * (2.09137015 + x * (-1.37418593 - x * 0.9549476));
    }
    return -0.37001483 + x * (3.75112997 + x * (-5.8733867 + x * 3.0817580));
  }

  /** Chromaticity (x, y) of a phase of daylight, by the CIE's formula; 4000 to 25000 K. */
  public static double[] daylight(double kelvin) {
    double k = 1e3 / kelvin;
    double x =
        kelvin <= 7000
            ? 0.244063 + k * (0.09911 + k * (2.9678 - k * 4.6070))
            : 0.237040 + k * (0.24748 + k * (1.9018 - k * 2.0064));
    return new double[] {x, -0.275 + x * (2.870 - x * 3.000)};
  }

  private static double[] mixed(double kelvin) {
    if (kelvin <= GLOWING_TO) {
      return planckian(kelvin);
    }
    double[] day = daylight(kelvin);
    if (kelvin >= DAYLIGHT_FROM) {
      return day;
    }
    double[] glow = planckian(kelvin);
    double share = (kelvin - GLOWING_TO) / (DAYLIGHT_FROM - GLOWING_TO);
    return new double[] {
      glow[0] + share * (day[0] - glow[0]), glow[1] + share * (day[1] - glow[1])
    };
  }

  /** CIE 1960 (u, v) of (x, y). */
  static double[] uv(double[] xy) {
    double scale = -2 * xy[0] + 12 * xy[1] + 3;
    return new double[] {4 * xy[0] / scale, 6 * xy[1] / scale};
  }

  private static double[] xy(double u, double v) {
    double scale = 2 * u - 8 * v + 4;
    return new double[] {3 * u / scale, 2 * v / scale};
  }

  private static void checkRange(double kelvin) {
    if (!(kelvin >= WARMEST && kelvin <= COOLEST)) {
      throw new IllegalArgumentException("no light of " + kelvin + " K");
    }
  }
}
