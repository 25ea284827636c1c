package org.duskply.engine.filter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * Planes for filter tests, and the question that every filter must answer: any window, same bits.
 */
final class Fields {
  /** A filter over one plane. */
  interface Filter {
    Region needs(Region out);

    void apply(Planes in, int plane, Planes out, int outPlane);
  }

  /** A value for each place. */
  interface Field {
    float at(int x, int y);
  }

  private Fields() {}

  static Planes of(Region area, Field field) {
    Planes planes = new Planes(area, 1);
    for (int y = area.top(); y < area.bottom(); y++) {
      for (int x = area.left(); x < area.right(); x++) {
        planes.plane(0)[planes.at(x, y)] = field.at(x, y);
      }
    }
    return planes;
  }

  /** Noise with lamps, blacks and flat patches, a function of place alone. */
  static Field noise(int seed) {
    return (x, y) -> {
      long patch = mix(seed + 31L * Math.floorDiv(x, 9) + 977L * Math.floorDiv(y, 11));
      if (patch % 5 == 0) {
        return (patch % 3) * 0.5f;
      }
      long bits = mix(seed ^ (x * 0x9E3779B97F4A7C15L + y * 0xC2B2AE3D27D4EB4FL));
      float v = (bits & 0xffff) / 65535f;
      return (bits >> 20) % 97 == 0 ? 40 * v : v;
    };
  }

  private static long mix(long v) {
    v = (v ^ (v >>> 30)) * 0xBF58476D1CE4E5B9L;
    v = (v ^ (v >>> 27)) * 0x94D049BB133111EBL;
    return (v ^ (v >>> 31)) & Long.MAX_VALUE;
  }

  /** {@code filter} over {@code out}, from {@code in} cut to exactly what it says it needs. */
  static Planes run(Filter filter, Planes in, Region out) {
    Planes cut = new Planes(filter.needs(out), 1);
    cut.copyFrom(in);
    Planes made = new Planes(out, 1);
    filter.apply(cut, 0, made, 0);
    return made;
  }

  /**
   * The whole at once, in bands of 1, 7 and 64 rows, and in rectangles by chance: the same bits.
   */
  static void expectSameInAnyWindow(Filter filter, Planes in, Region whole, Random random) {
    Planes all = run(filter, in, whole);
    for (int rows : new int[] {1, 7, 64}) {
      for (int y = whole.top(); y < whole.bottom(); y += rows) {
        expectSame(filter, in, all, whole.rows(y, y + rows));
      }
    }
    for (int i = 0; i < 12; i++) {
      int x = whole.left() + random.nextInt(whole.width());
      int y = whole.top() + random.nextInt(whole.height());
      Region window = new Region(x, y, x + 1 + random.nextInt(50), y + 1 + random.nextInt(50));
      expectSame(filter, in, all, window.meet(whole));
    }
  }

  private static void expectSame(Filter filter, Planes in, Planes all, Region window) {
    Planes cut = new Planes(window, 1);
    cut.copyFrom(all);
    assertThat(run(filter, in, window).plane(0)).as(window.toString()).isEqualTo(cut.plane(0));
  }

  /** A hash of bits that is the same everywhere. */
  static long hash(Planes planes) {
    long hash = 0xcbf29ce484222325L;
    for (float v : planes.plane(0)) {
      hash = (hash ^ Float.floatToIntBits(v + 0f)) * 0x100000001b3L;
    }
    return hash;
  }

  static Filter filter(Gaussian gaussian) {
    return new Filter() {
      @Override
      public Region needs(Region out) {
        return gaussian.needs(out);
      }

      @Override
      public void apply(Planes in, int plane, Planes out, int outPlane) {
        gaussian.apply(in, plane, out, outPlane);
      }
    };
  }

  static Filter filter(WindowMean mean) {
    return new Filter() {
      @Override
      public Region needs(Region out) {
        return mean.needs(out);
      }

      @Override
      public void apply(Planes in, int plane, Planes out, int outPlane) {
        mean.apply(in, plane, out, outPlane);
      }
    };
  }

  static Filter filter(Resampler resampler) {
    return new Filter() {
      @Override
      public Region needs(Region out) {
        return resampler.needs(out);
      }

      @Override
      public void apply(Planes in, int plane, Planes out, int outPlane) {
        resampler.apply(in, plane, out, outPlane);
      }
    };
  }
}
