package org.duskply.examples.trace;

/** Repeatable randomness: hashes of whole numbers, and smooth noise between lattice points. */
public final class Noise {
  private static final double TO_UNIT = 1.0 / (1L << 32);

  private Noise() {}

  /** A hash of three numbers; all 32 bits are well mixed. */
  public static int hash(int a, int b, int c) {
    int h =
        a * 0x9E3779B1
            ^ Integer.rotateLeft(b * 0x85EBCA77, 13)
            ^ Integer.rotateLeft(c * 0xC2B2AE3D, 21);
    h ^= h >>> 16;
    h *= 0x7FEB352D;
    h ^= h >>> 15;
    h *= 0x846CA68B;
    return h ^ h >>> 16;
  }

  /** A random number in [0, 1) that belongs to three numbers. */
  public static double unit(int a, int b, int c) {
    return (hash(a, b, c) & 0xFFFFFFFFL) * TO_UNIT;
  }

  /** Smooth noise in the plane, 0…1, features one unit wide. */
  public static double at(double x, double y, int seed) {
    int ix = floor(x);
    int iy = floor(y);
    double u = ease(x - ix);
    double v = ease(y - iy);
    double low = Maths.mix(unit(ix, iy, seed), unit(ix + 1, iy, seed), u);
    double high = Maths.mix(unit(ix, iy + 1, seed), unit(ix + 1, iy + 1, seed), u);
    return Maths.mix(low, high, v);
  }

  /** Smooth noise in space, 0…1. */
  public static double at(double x, double y, double z, int seed) {
    int iz = floor(z);
    double w = ease(z - iz);
    return Maths.mix(at(x, y, seed + 7919 * iz), at(x, y, seed + 7919 * (iz + 1)), w);
  }

  /** Noise at several scales, each half as wide and half as strong as the one before; 0…1. */
  public static double fractal(double x, double y, int octaves, int seed) {
    double sum = 0;
    double weight = 0.5;
    double total = 0;
    double px = x;
    double py = y;
    for (int i = 0; i < octaves; i++) {
      sum += weight * at(px, py, seed + 101 * i);
      total += weight;
      weight *= 0.5;
      double turned = 1.62 * px - 1.18 * py + 3.7;
      py = 1.18 * px + 1.62 * py + 1.3;
      px = turned;
    }
    return sum / total;
  }

  private static int floor(double x) {
    return (int) Math.floor(x);
  }

  private static double ease(double t) {
    return t * t * t * (t * (t * 6 - 15) + 10);
  }
}
