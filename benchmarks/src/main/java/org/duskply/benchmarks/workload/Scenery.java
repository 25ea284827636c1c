package org.duskply.benchmarks.workload;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * What the frames of a workload show, in linear light: broad shapes and fine grain of a view at
 * dusk, a pool of light where a pop goes off, and the noise of a sensor, so that files compress
 * about as photographs do. A pure function of frame and place.
 */
final class Scenery {
  private static final int OCTAVES = 7;

  /** Electrons that fill a well, and the noise of reading it out, in electrons. */
  private static final double FULL_WELL = 110_000;

  private static final double READ_NOISE = 5;

  private final Workload workload;

  Scenery(Workload workload) {
    this.workload = workload;
  }

  /** The rows of a frame that lie in an area as wide as the picture. */
  Planes rows(int frame, Region area) {
    Planes rows = new Planes(area, 3);
    double[] light = frame == 0 ? new double[] {0, 0, 1, 0} : pool(frame);
    double ambient = frame == 0 ? 1 : 0.45;
    float[] red = rows.plane(0);
    float[] green = rows.plane(1);
    float[] blue = rows.plane(2);
    double[] views = new double[area.width()];
    for (int y = area.top(); y < area.bottom(); y++) {
      view(y, views);
      for (int x = 0; x < area.width(); x++) {
        double view = views[x];
        double dx = (x - light[0]) / light[2];
        double dy = (y - light[1]) / light[2];
        double flash = light[3] / (1 + dx * dx + dy * dy);
        double lit = view * (0.14 * ambient + flash);
        int at = rows.at(x, y);
        long dice = mix(((long) frame << 48) ^ ((long) y << 24) ^ x);
        red[at] = seen(lit * (0.8 + 0.4 * flash), dice);
        green[at] = seen(lit * 0.9, mix(dice + 1));
        blue[at] = seen(lit * (1.15 - 0.4 * flash), mix(dice + 2));
      }
    }
    return rows;
  }

  /** Middle, reach and strength of a frame's light: about its layer's polygon. */
  private double[] pool(int frame) {
    double[] middle = workload.light(frame);
    return new double[] {middle[0], middle[1], workload.width() / 14.0, 0.5};
  }

  /** How bright things of a row are: octaves of smooth noise, the finest a few pixels across. */
  private void view(int y, double[] row) {
    Arrays.fill(row, 0.55);
    double weight = 0.5;
    double size = workload.width() / 3.0;
    for (int i = 0; i < OCTAVES; i++) {
      addSmooth(row, y / size, size, i, weight);
      weight *= 0.55;
      size *= 0.42;
    }
    for (int x = 0; x < row.length; x++) {
      row[x] = Math.max(0.02, row[x]);
    }
  }

  /** Adds a row of one octave; four corners of its grid are enough for all pixels between them. */
  private static void addSmooth(double[] row, double y, double size, int octave, double weight) {
    int top = (int) Math.floor(y);
    double v = y - top;
    double down = v * v * (3 - 2 * v);
    int left = -1;
    double[] c = new double[4];
    for (int x = 0; x < row.length; x++) {
      double place = x / size;
      int column = (int) Math.floor(place);
      if (column != left) {
        left = column;
        c[0] = corner(left, top, octave);
        c[1] = corner(left + 1, top, octave);
        c[2] = corner(left, top + 1, octave);
        c[3] = corner(left + 1, top + 1, octave);
      }
      double u = place - left;
      double across = u * u * (3 - 2 * u);
      double above = c[0] * (1 - across) + c[1] * across;
      double below = c[2] * (1 - across) + c[3] * across;
      row[x] += weight * (above * (1 - down) + below * down - 0.5);
    }
  }

  private static double corner(int x, int y, int octave) {
    return (mix(((long) octave << 56) ^ ((long) (y & 0xFFFFFF) << 24) ^ (x & 0xFFFFFF)) >>> 40)
        / (double) (1 << 24);
  }

  /** Light as a sensor reads it: shot noise and read noise, near enough a bell from four dice. */
  private static float seen(double light, long dice) {
    double held = Math.min(1, Math.max(0, light));
    double bell =
        ((dice & 0xFFFF) + (dice >>> 16 & 0xFFFF) + (dice >>> 32 & 0xFFFF) + (dice >>> 48))
                / 65536.0
            - 2;
    double deviation = Math.sqrt(held / FULL_WELL + sq(READ_NOISE / FULL_WELL));
    return (float) Math.min(1, Math.max(0, held + bell * 1.7320508 * deviation));
  }

  private static double sq(double v) {
    return v * v;
  }

  private static long mix(long seed) {
    long z = seed + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
