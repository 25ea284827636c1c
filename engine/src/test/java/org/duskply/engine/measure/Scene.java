package org.duskply.engine.measure;

import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;

/**
 * A view whose places are from nine stops below white to one above, with a camera that sees it:
 * noise of photons and of reading, a shutter, and a developer.
 */
final class Scene {
  static final int WIDTH = 800;
  static final int HEIGHT = 480;
  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);

  /** A camera's full well in electrons, and the noise of reading it (common practice). */
  private static final double WELL = 30_000;

  private static final double READ = 4;

  private Scene() {}

  /** A developer that does nothing of its own. */
  static final DoubleUnaryOperator PLAIN = v -> v;

  /**
   * The S that a developer's default look has: on the encoded axis, {@code v + a·sin(2πv)·…} darker
   * shadows and a shoulder.
   */
  static DoubleUnaryOperator curve(double strength) {
    return v -> {
      double x = Math.min(1, v);
      double s = x * x * (3 - 2 * x);
      return x + strength * (s - x);
    };
  }

  /** Linear light of a place, in parts of white at the plain exposure. */
  static double light(int x, int y, int c) {
    double stops = -9 + 10 * ((hash(x / 3, y / 3, 7) >>> 40) / (double) (1 << 24));
    return StrictMath.pow(2, stops) * (1 - 0.12 * c * ((hash(x / 3, y / 3, 8) >>> 40) / (double) (1 << 24)));
  }

  /**
   * A developed frame.
   *
   * @param stops of exposure
   * @param look on the encoded axis
   * @param flash light that a flash adds at a place
   */
  static TiffFile frame(int seed, int bits, double stops, DoubleUnaryOperator look, Flash flash) {
    double gain = StrictMath.pow(2, stops);
    int full = (1 << bits) - 1;
    return new TiffFile(
            WIDTH,
            HEIGHT,
            3,
            bits,
            (x, y, c) -> {
              double light = gain * light(x, y, c) + flash.light(x, y);
              double noise = Math.sqrt(light / WELL + READ * READ / WELL / WELL);
              double seen = light + noise * normal(seed, x, y, c);
              double encoded = SRGB.curve(c).toEncoded(Math.max(0, Math.min(1, seen)));
              return (int) (Math.max(0, Math.min(1, look.applyAsDouble(encoded))) * full + 0.5);
            })
        .compression(8)
        .predictor(2)
        .strips(16);
  }

  /** What a flash adds. */
  interface Flash {
    Flash NONE = (x, y) -> 0;

    double light(int x, int y);
  }

  private static double normal(int seed, int x, int y, int c) {
    double sum = 0;
    for (int i = 0; i < 12; i++) {
      sum += (hash(x * 4 + c, y * 16 + i, seed) >>> 40) / (double) (1 << 24);
    }
    return sum - 6;
  }

  static long hash(int a, int b, int seed) {
    long h = (a * 0x9E3779B97F4A7C15L) ^ (b * 0xC2B2AE3D27D4EB4FL) ^ (seed * 0x165667B19E3779F9L);
    h ^= h >>> 31;
    h *= 0xBF58476D1CE4E5B9L;
    h ^= h >>> 29;
    h *= 0x94D049BB133111EBL;
    return h ^ (h >>> 32);
  }
}
