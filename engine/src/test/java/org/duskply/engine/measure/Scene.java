package org.duskply.engine.measure;

import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;

/**
 * A view whose places lie from nine stops below white to one above, seen by a camera with the noise
 * of light and of its sensor, and developed. One value for each lattice point and the pixels that
 * follow it, so that it is made quickly.
 */
public final class Scene {
  public static final int WIDTH = 480;
  public static final int HEIGHT = 320;

  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);

  /** Electrons at white, and those of reading (common practice, no source). */
  private static final double WELL = 30_000;

  private static final double READ = 4;

  private Scene() {}

  /** Light that one frame has and another has not, by lattice point; in parts of white. */
  public interface Flash {
    /** No flash. */
    Flash NONE = (i, j) -> 0;

    double light(int i, int j);
  }

  /** A developer's look: an S on the encoded axis, 0 none, 1 strong. */
  public static DoubleUnaryOperator curve(double strength) {
    return v -> v + strength * (v * v * (3 - 2 * v) - v);
  }

  /**
   * A developed frame.
   *
   * @param bits 8 or 16
   * @param stops of exposure
   * @param look on the encoded axis
   */
  public static TiffFile frame(
      int seed, int bits, double stops, DoubleUnaryOperator look, Flash flash) {
    int across = WIDTH / Lattice.PITCH;
    int down = HEIGHT / Lattice.PITCH;
    int[] codes = new int[across * down * 3];
    for (int j = 0; j < down; j++) {
      for (int i = 0; i < across; i++) {
        for (int c = 0; c < 3; c++) {
          double light = StrictMath.pow(2, stops) * light(i, j, c) + flash.light(i, j);
          codes[(j * across + i) * 3 + c] = code(seed, i, j, c, light, look, (1 << bits) - 1);
        }
      }
    }
    return new TiffFile(
            WIDTH,
            HEIGHT,
            3,
            bits,
            (x, y, c) -> codes[(y / Lattice.PITCH * across + x / Lattice.PITCH) * 3 + c])
        .compression(8)
        .strips(16);
  }

  private static double light(int i, int j, int c) {
    double stops = -9 + 10 * uniform(i, j, 7);
    return StrictMath.pow(2, stops) * (1 - 0.12 * c * uniform(i, j, 8));
  }

  private static int code(
      int seed, int i, int j, int c, double light, DoubleUnaryOperator look, int full) {
    double noise = StrictMath.sqrt(light / WELL + READ * READ / (WELL * WELL));
    double seen = light + noise * normal(i, j, 3 * seed + c);
    double encoded = SRGB.curve(c).toEncoded(Math.max(0, Math.min(1, seen)));
    return (int) (Math.max(0, Math.min(1, look.applyAsDouble(encoded))) * full + 0.5);
  }

  /** The sum of twelve uniform numbers less six: as good as normal. */
  private static double normal(int i, int j, int seed) {
    double sum = -6;
    for (int k = 0; k < 12; k++) {
      sum += uniform(i, j, 100 + 12 * seed + k);
    }
    return sum;
  }

  private static double uniform(int i, int j, int seed) {
    long h = i * 0x9E3779B97F4A7C15L ^ j * 0xC2B2AE3D27D4EB4FL ^ seed * 0x165667B19E3779F9L;
    h = (h ^ h >>> 31) * 0xBF58476D1CE4E5B9L;
    h = (h ^ h >>> 29) * 0x94D049BB133111EBL;
    return ((h ^ h >>> 32) >>> 40 & 0xffffff) / (double) (1 << 24);
  }
}
